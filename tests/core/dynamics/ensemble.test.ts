import { describe, expect, it } from 'vitest';
import { run, runEnsemble } from '../../../src/core/dynamics/index.ts';
import type { RunInput } from '../../../src/core/dynamics/types.ts';
import { helix, makeTrack, straight, transition } from '../../../src/core/track/index.ts';
import { at, engine, trial, wagon } from './trains.ts';

const spiral = makeTrack({
  start: { x: 0, y: 0, heading: 0 },
  elements: [straight(1.5), transition(0.3, 0, 2), helix(0.5, 1)],
  profile: {
    points: [
      { chainage: 0, height: 0 },
      { chainage: 1.6, height: 0, curve: { length: 0.2 } },
      { chainage: 4.9, height: 0.06 },
    ],
  },
});
const truck = wagon(0.08, { slack: 0.001 });
const five = [engine(0.4), ...Array.from({ length: 4 }, () => truck)];

describe('an ensemble', () => {
  const more = { script: { timeLimit: 4 } };
  const members: RunInput[] = [
    ...[0.3, 0.5, 0.8].map((setting) => trial(spiral, five, [at(0, setting, 0.5)], more)),
    trial(spiral, five, [at(0, 0.5, 0.5)], { ...more, forces: { curveFactor: 2 } }),
    trial(spiral, [engine(0.5), ...five.slice(1)], [at(0, 0.5, 0.5)], more),
    trial(spiral, five.slice(0, 4), [at(0, 0.5, 0.5)], more),
  ];

  it('gives each train the bits it has when it runs alone', () => {
    const together = runEnsemble(members);
    expect(together).toHaveLength(members.length);
    members.forEach((member, m) => {
      expect(together[m]).toEqual(run(member));
    });
    // They are not all one and the same run.
    expect(new Set(together.map((one) => one.chainage.at(-1))).size).toBe(members.length);
  });

  it('tells of an input that cannot run before any has', () => {
    const stranded = { ...members[0]!, script: { ...members[0]!.script, finish: 99 } };
    expect(() => runEnsemble([members[0]!, stranded])).toThrow(/finish must lie/);
  });
});
