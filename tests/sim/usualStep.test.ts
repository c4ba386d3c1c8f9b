import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { run, usualStep } from '../../src/core/dynamics/index.ts';
import { parseScene } from '../../src/scene/index.ts';
import { type CompiledTrial, compileScene, compileTrial } from '../../src/sim/index.ts';
import { wagon } from '../core/dynamics/trains.ts';

const scenes = new URL('../../scenes/', import.meta.url);
const files = ['.', 'risks'].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, scenes))
    .filter((name) => name.endsWith('.json'))
    .map((name) => `${folder}/${name}`),
);

/** Every trial of the bundled scenes that begins by itself, but for those whose train, way, start and orders are another's. */
function* trialsOf(file: string): Generator<CompiledTrial> {
  const parsed = parseScene(readFileSync(new URL(file, scenes), 'utf8'));
  if (!parsed.ok) throw new Error(`${file} does not parse`);
  const compiled = compileScene(parsed.scene);
  for (const { id, follows } of parsed.scene.trials) if (follows === undefined) yield compileTrial(compiled, id);
}

/** Greatest draft and greatest buff of each joint over a whole run, N. */
function peaksOf({ path, train, script, options }: CompiledTrial, step: number): { draft: number[]; buff: number[] } {
  const { vehicles, draftPeak, buffPeak } = run({ path, train, script, options: { ...options, step } });
  const joints = vehicles - 1;
  const most = (of: Float64Array) =>
    Array.from({ length: joints }, (_, j) => {
      let greatest = 0;
      for (let k = j; k < of.length; k += joints) greatest = Math.max(greatest, Math.abs(of[k]));
      return greatest;
    });
  return { draft: most(draftPeak), buff: most(buffPeak) };
}

/** Forces below this are no matter: the weight of a gram, N. */
const floor = 0.01;

describe('the step that a train is run with', () => {
  it.each(files)(
    '%s: half of it changes the greatest pull and push of every train by less than a hundredth',
    (file) => {
      for (const trial of trialsOf(file)) {
        const { step } = trial.options;
        const [usual, half] = [peaksOf(trial, step), peaksOf(trial, step / 2)];
        for (const way of ['draft', 'buff'] as const) {
          const [greatest, finer] = [Math.max(0, ...usual[way]), Math.max(0, ...half[way])];
          if (finer < floor) continue;
          expect(Math.abs(greatest - finer) / finer, `${trial.id}, ${way}`).toBeLessThan(0.01);
        }
      }
    },
  );

  it('is a millisecond, halved until the quickest joint swings in thirty steps, and a quarter at least', () => {
    // Two bodies on a spring swing in 2π·√(m*/k), m* their masses' product over their sum (any textbook of mechanics).
    const swinging = (seconds: number) => {
      const masses = [0.12, 0.3];
      const reduced = (masses[0] * masses[1]) / (masses[0] + masses[1]);
      // Two shanks one behind the other are half as stiff as each.
      const each = 2 * reduced * ((2 * Math.PI) / seconds) * ((2 * Math.PI) / seconds);
      const vehicles = masses.map((mass) => wagon(mass, { draftStiffness: each, buffStiffness: each / 3 }));
      return usualStep({ name: 'two', vehicles });
    };
    expect([0.031, 0.029, 0.0151, 0.0149, 0.005].map(swinging)).toEqual([1e-3, 5e-4, 5e-4, 2.5e-4, 2.5e-4]);
    expect(usualStep({ name: 'one', vehicles: [wagon(0.1)] })).toBe(1e-3);
    // A rigid bar does not swing.
    const bar = { draftStiffness: Number.POSITIVE_INFINITY, buffStiffness: Number.POSITIVE_INFINITY };
    expect(usualStep({ name: 'barred', vehicles: [wagon(0.1, bar), wagon(0.1, bar)] })).toBe(1e-3);
  });
});
