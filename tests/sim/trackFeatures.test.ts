import { describe, expect, it } from 'vitest';
import { gradeBreaks, trackPoint } from '../../src/core/track/index.ts';
import { parseScene } from '../../src/scene/index.ts';
import { compileScene } from '../../src/sim/index.ts';
import { sample, sampleWith, sceneOf } from '../scene/sample.ts';

const line = sample.tracks[0];

/** The sample's track with more said about it, compiled. */
const compiled = (change: object) =>
  compileScene(sceneOf(sampleWith('tracks.0', { ...line, ...change }))).tracks.get('line')!;

const problems = (change: object, ...others: object[]) => {
  const parsed = parseScene(sampleWith('tracks', [{ ...line, ...change }, ...others]));
  return parsed.ok ? [] : parsed.problems.map(({ path, allowed }) => `${path}: ${allowed}`);
};

const eased = [
  { kind: 'straight', id: 'lead', lengthMm: 2000 },
  { kind: 'transition', lengthMm: 300 },
  { kind: 'arc', id: 'first', radiusMm: 1000, turn: 'left', lengthMm: 1000, cantMm: 0.99 },
  { kind: 'transition', lengthMm: 400 },
  { kind: 'arc', id: 'second', radiusMm: 1000, turn: 'right', lengthMm: 1000, cantMm: 0.33 },
  { kind: 'straight', id: 'tail', lengthMm: 2000 },
];

describe('cant in a scene', () => {
  const track = compiled({ alignment: eased, cant: { gaugeMm: 16.5, packed: 'both', rampMm: 200 } });

  it('runs in over transitions, changes hands in the middle of one, and has a ramp where there is none', () => {
    // Between the middles of rail heads of 1.0 mm on 16.5 mm gauge.
    const cantMm = (s: number): number => Math.sin(trackPoint(track, s).cant) * 17.5;
    expect(cantMm(1.9)).toBeCloseTo(0, 12);
    expect(cantMm(2.15)).toBeCloseTo(0.495, 3);
    expect(cantMm(2.8)).toBeCloseTo(0.99, 12);
    // Three quarters of the way from +0.99 to -0.33 is nothing.
    // The angle, not its sine, runs linearly.
    expect(cantMm(3.6)).toBeCloseTo(0, 3);
    expect(cantMm(4.2)).toBeCloseTo(-0.33, 12);
    // The straight after the second curve gives up 200 mm for the run-out.
    expect(cantMm(4.8)).toBeCloseTo(-0.165, 4);
    expect(cantMm(5.2)).toBeCloseTo(0, 12);
  });

  it('is asked for a gauge and a run-in', () => {
    expect(problems({ alignment: eased })).toEqual([
      expect.stringMatching(/^tracks\[0\].alignment\[2\].cantMm: .*gauge/),
    ]);
    expect(problems({ alignment: eased, cant: { gaugeMm: 16.5, packed: 'outer' } })).toEqual([
      'tracks[0].cant.rampMm: a transition, or the length of the run-in',
    ]);
    expect(problems({ alignment: eased, cant: { gaugeMm: 16.5, packed: 'outer', rampMm: 2500 } })).toEqual([
      'tracks[0].alignment[5]: at least the 2500 mm that it needs',
    ]);
  });
});

describe('a strip in a scene', () => {
  it('sags under its own weight, more once settled, and steps where its joint does', () => {
    const supports = { everyMm: 400 };
    const strip = { material: 'mdf', thicknessMm: 6, widthMm: 60 };
    const plain = { supports, stripJoints: [] };
    const at = (change: object) => trackPoint(compiled({ ...plain, ...change }), 1).z;
    const fresh = at({ strip }) - at({});
    expect(fresh).toBeLessThan(0);
    expect((at({ strip: { ...strip, settled: true } }) - at({})) / fresh).toBeCloseTo(3.25, 6);
    const stepped = compiled({ supports, stripJoints: [{ atMm: 1200, stepMm: 1 }] });
    expect(trackPoint(stepped, 1.22).z - trackPoint(stepped, 1.18).z).toBeGreaterThan(0.0008);
    expect(gradeBreaks(stepped).every((place) => Math.abs(place.chainage - 1.2) > 0.03)).toBe(true);
  });
});

describe('a measured track in a scene', () => {
  const { supports: _supports, stripJoints: _joints, ...bare } = line;
  const track = (change: object) =>
    compileScene(sceneOf(sampleWith('tracks.0', { ...bare, ...change }))).tracks.get('line')!;

  it('has its measured heights and kinks', () => {
    const measured = {
      between: 'straight',
      heights: [
        { atMm: 0, heightMm: 1 },
        { atMm: 4000, heightMm: 41 },
      ],
    };
    expect(trackPoint(track({ measured }), 3).z).toBeCloseTo(0.031, 14);
    const rails = { kinks: [{ atMm: 1000, turnDeg: 2, reachMm: 150 }] };
    expect(track({ rails }).jumps[1]).toMatchObject({
      chainage: expect.closeTo(1, 12),
      heading: expect.closeTo((2 * Math.PI) / 180, 12),
    });
  });
});

describe('a branch in a scene', () => {
  const turnout = { hand: 'left', radiusMm: 900, gaugeMm: 16.5, crossing: { oneIn: 6 }, frontMm: 20, heelMm: 40 };
  const branch = {
    id: 'siding',
    name: 'Siding',
    start: { branchOf: 'line', atMm: 500, towards: 'end', turnout },
    alignment: [{ kind: 'straight', lengthMm: 600 }],
    profile: [{ at: { endOf: 'track' }, heightMm: 0 }],
  };

  it('starts on its main track and lies as high to the heel', () => {
    const { tracks } = compileScene(sceneOf(sampleWith('tracks', [line, branch])));
    const [main, siding] = [tracks.get('line')!, tracks.get('siding')!];
    expect(trackPoint(siding, 0)).toMatchObject({ x: 0.5, y: 0, heading: 0 });
    expect(trackPoint(siding, 0).z).toBeCloseTo(trackPoint(main, 0.5).z, 15);
    expect(trackPoint(siding, siding.length).heading).toBeCloseTo(Math.atan(1 / 6), 12);
    expect(siding.jumps.every((jump) => jump.position === 0)).toBe(true);
  });

  it('leads off towards the start as well', () => {
    const back = { ...branch, start: { ...branch.start, towards: 'start', atMm: 1500 } };
    const siding = compileScene(sceneOf(sampleWith('tracks', [line, back]))).tracks.get('siding')!;
    expect(trackPoint(siding, 0).heading).toBeCloseTo(Math.PI, 12);
    expect(trackPoint(siding, siding.length).y).toBeLessThan(0);
  });

  it('needs a track before it, and a turnout that can be built', () => {
    expect(problems({ start: { ...branch.start, branchOf: 'other' } })[0]).toMatch(
      /^tracks\[0\].start.branchOf: a track before it/,
    );
    const flat = { ...turnout, radiusMm: 3000 };
    expect(problems({}, { ...branch, start: { ...branch.start, turnout: flat } })[0]).toMatch(
      /^tracks\[1\].start.turnout: A curve of 3 m has turned/,
    );
  });
});
