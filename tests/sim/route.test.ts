import { describe, expect, it } from 'vitest';
import { describeFinding } from '../../src/core/findings/index.ts';
import { trackPoint } from '../../src/core/track/index.ts';
import { placedSupports, type Scene } from '../../src/scene/index.ts';
import { applyCure, compileScene, compileTrial, namingOf } from '../../src/sim/index.ts';
import { affectedTrials } from '../../src/sim/study/affected.ts';
import { sample, sceneOf } from '../scene/sample.ts';
import { patience, solve } from './solved.ts';

const { track: _track, towards: _towards, ...trial } = sample.trials[0];
const withTrials = (...trials: readonly object[]): Scene => sceneOf({ ...sample, trials });
const routed = (route: readonly object[], change: object = {}): Scene =>
  withTrials({ ...trial, startMm: 900, finishMm: 5900, ...change, route });

/** The sample's track in two halves, which meet half-way round its first curve; heights, support and joint are where they were. */
const halves = sceneOf({
  ...sample,
  tracks: [
    {
      id: 'near',
      name: 'Near half',
      start: { xMm: 0, yMm: 0, headingDeg: 0 },
      alignment: [
        { kind: 'straight', lengthMm: 2000 },
        { kind: 'arc', radiusMm: 1000, turn: 'left', lengthMm: 500 },
      ],
      profile: [{ atMm: 0, heightMm: 0 }],
    },
    {
      id: 'far',
      name: 'Far half',
      // Half a radian round a circle of 1 m: 1 m · sin and versine of 0.5, and the heading in degrees.
      start: { xMm: 2000 + 479.425538604203, yMm: 122.417438109627, headingDeg: 90 / Math.PI },
      alignment: [
        { kind: 'arc', radiusMm: 1000, turn: 'left', lengthMm: 500 },
        { kind: 'arc', radiusMm: 1000, turn: 'right', lengthMm: 1000 },
        { kind: 'straight', lengthMm: 2000 },
      ],
      profile: [{ atMm: 0, heightMm: 0 }],
    },
  ],
  trials: [
    {
      ...trial,
      route: [
        { track: 'near', towards: 'end' },
        { track: 'far', towards: 'end' },
      ],
    },
  ],
});

/** The same shape as one track. */
const { supports: _supports, stripJoints: _joints, ...bare } = sample.tracks[0];
const level = sceneOf({ ...sample, tracks: [{ ...bare, profile: [{ atMm: 0, heightMm: 0 }] }] });

describe('a route', { timeout: patience }, () => {
  it('over all of one track runs as the trial on that track does, bit for bit', async () => {
    const plain = await solve(sceneOf(sample), 'up');
    const over = await solve(routed([{ track: 'line', towards: 'end' }]), 'up');
    expect(over.run.chainage).toEqual(plain.run.chainage);
    expect(over.run.force).toEqual(plain.run.force);
    expect(over.risks.map(({ margins }) => margins)).toEqual(plain.risks.map(({ margins }) => margins));
  });

  it('backwards over a track runs as the trial towards its start does, places counted from the other end', async () => {
    const back = {
      startMm: 5100,
      finishMm: 100,
      orders: [
        { atMm: 4000, setting: 0.3 },
        { atS: 0, setting: 0.5 },
      ],
    };
    const plain = await solve(withTrials({ ...sample.trials[0], ...back, towards: 'start' }), 'up');
    const over = await solve(
      routed([{ track: 'line', towards: 'start' }], {
        startMm: 900,
        finishMm: 5900,
        orders: [
          { atMm: 2000, setting: 0.3 },
          { atS: 0, setting: 0.5 },
        ],
      }),
      'up',
    );
    expect(over.run.frames).toBe(plain.run.frames);
    over.run.chainage.forEach((place, i) => {
      if (!(Math.abs(place - plain.run.chainage[i]) < 1e-9)) throw new Error(`frame value ${i}`);
    });
    plain.findings.forEach((finding, k) => {
      expect(over.findings[k].risk).toBe(finding.risk);
      expect(over.findings[k].margin).toBeCloseTo(finding.margin, 9);
    });
    // Where nothing but one place is the worst; what is alike all along the line may be told of any of it.
    for (const risk of ['wheel-climb', 'jack-knife'] as const) {
      const [there, back] = [plain, over].map(({ findings }) => findings.find((one) => one.risk === risk)?.chainage);
      expect(back).toBeCloseTo(6 - (there ?? Number.NaN), 9);
    }
  });

  it('over two tracks end to end runs as one track of the same shape does', async () => {
    const one = await solve(level, 'up');
    const two = await solve(halves, 'up');
    expect(two.trial.joints).toBeUndefined();
    expect(two.run.frames).toBe(one.run.frames);
    let most = 0;
    two.run.chainage.forEach((place, i) => {
      most = Math.max(most, Math.abs(place - one.run.chainage[i]));
    });
    // The two halves meet within a picometre or so; a thousand steps of the run carry that on.
    expect(most).toBeLessThan(1e-9);
    two.findings.forEach((finding, k) => {
      expect(finding.risk).toBe(one.findings[k].risk);
      expect(finding.margin).toBeCloseTo(one.findings[k].margin, 8);
    });
  });

  it('tells every place along the route and on the track that lies there', async () => {
    const { trial, findings, run } = await solve(halves, 'up');
    const late = findings.find(({ chainage }) => chainage > 2.6)!;
    const naming = namingOf(trial, { run });
    const told = describeFinding(late, naming, { lengthUnit: 'mm', gradeForm: 'percent' });
    const own = (late.chainage - 2.5).toFixed(2);
    expect(told.where).toContain(`${late.chainage.toFixed(2)}\u2009m (${own}\u2009m on Far half)`);
  });
});

describe('cures on a route', { timeout: patience }, () => {
  /** Over the second part of the line only, backwards: support 3 at 600 mm is 5400 mm on. */
  const backwards = routed([{ track: 'line', towards: 'start', fromMm: 5800 }], { startMm: 900, finishMm: 5700 });

  it('set the support of the track that the leg is on', () => {
    const after = applyCure(backwards, 'up', { kind: 'set-support', support: 2, by: -0.0015, leg: 0 })!;
    expect(placedSupports(after.tracks[0])[2]).toMatchObject({ atMm: 600, offMm: 0 });
  });

  it('find the strip joint by its place along the route', () => {
    // The joint at 1200 mm of the track is 4600 mm from where the route begins, at 5800 mm.
    const after = applyCure(backwards, 'up', { kind: 'splice-joint', chainage: 4.6, leg: 0 })!;
    expect(after.tracks[0].stripJoints).toEqual([]);
    expect(applyCure(backwards, 'up', { kind: 'splice-joint', chainage: 1.2, leg: 0 })).toBeNull();
  });

  it('are refused where the tracks would no longer meet, and not where nothing follows', () => {
    // An easement into the curve before the joint shifts it; on the last track it shifts the free end.
    const before = { kind: 'easement', chainage: 2, length: 0.3, leg: 0 } as const;
    expect(applyCure(halves, 'up', before)).toBeNull();
    const beyond = { kind: 'easement', chainage: 3, length: 0.3, leg: 1 } as const;
    expect(applyCure(halves, 'up', beyond)?.tracks[1].alignment).toHaveLength(4);
  });

  it('that a finding offers name the support of its track, and help', async () => {
    const high = sceneOf({
      ...halves,
      tracks: [halves.tracks[0], { ...halves.tracks[1], supports: { everyMm: 300, off: [{ support: 9, byMm: 15 }] } }],
    });
    const before = await solve(high, 'up');
    const blamed = before.findings[0];
    expect(blamed.verdict).toBe('fails');
    expect(blamed.causes).toContainEqual(expect.objectContaining({ kind: 'support-off', support: 8, leg: 1 }));
    // Support 9 stands 2400 mm along the far half, 4900 mm along the route.
    expect(Math.abs(blamed.chainage - 4.9)).toBeLessThan(0.3);
    const cure = blamed.cures.find(({ kind }) => kind === 'set-support')!;
    const after = applyCure(high, 'up', cure)!;
    expect(placedSupports(after.tracks[1])[8].offMm).toBeCloseTo(0, 9);
    const mended = await solve(after, 'up');
    expect(mended.failing).not.toContain(blamed.risk);
  });
});

describe('a route that cannot be run', () => {
  const pathOf = (scene: Scene) => compileTrial(compileScene(scene), 'up').path;

  it('has a gap', () => {
    const gap = routed([
      { track: 'line', towards: 'end', toMm: 3000 },
      { track: 'line', towards: 'end', fromMm: 3100 },
    ]);
    expect(() => pathOf(gap)).toThrow(/route\[1\] \("line" from 3100 mm\).*route\[0\].*1 mm and 1°/);
  });

  it('sets back', () => {
    const back = routed([
      { track: 'line', towards: 'end' },
      { track: 'line', towards: 'start' },
    ]);
    expect(() => pathOf(back)).toThrow(/set back.*give each way a trial of its own/);
  });

  it('is not one that misses by less than rails are laid to', () => {
    const tracks = [halves.tracks[0], { ...halves.tracks[1], start: { ...halves.tracks[1].start, xMm: 2479.9 } }];
    const near = compileTrial(compileScene(sceneOf({ ...halves, tracks })), 'up');
    expect(near.joints).toHaveLength(1);
    // Half a millimetre, less a quarter of a tenth: 2479.9 - 2479.4255.
    expect(near.joints?.[0].position).toBeCloseTo(0.000474461, 8);
    expect(near.joints?.[0].chainage).toBeCloseTo(2.5, 12);
    const past = trackPoint(near.path.track, 2.6);
    expect(past.heading).toBeCloseTo(0.6, 9);
  });
});

describe('what a change makes a difference to', () => {
  it('are the trials whose route runs over the track, or over one that branches off it', () => {
    expect(affectedTrials(halves, 'tracks/far/supports/everyMm')).toEqual(['up']);
    expect(affectedTrials(halves, 'tracks/near/name')).toEqual(['up']);
  });
});
