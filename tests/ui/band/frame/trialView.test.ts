import { beforeAll, describe, expect, test } from 'vitest';
import { trackPoint } from '../../../../src/core/track/index.ts';
import {
  type CompiledTrial,
  compileScene,
  compileTrial,
  runTrial,
  type TrialResult,
} from '../../../../src/sim/index.ts';
import type { BandFrame } from '../../../../src/ui/band/frame/bandFrame.ts';
import { frameAt, valueBetween } from '../../../../src/ui/band/frame/motion.ts';
import { timeAtEnd, timeAtX, timeNextSupport, timeOneCell } from '../../../../src/ui/band/frame/navigate.ts';
import {
  strongestByJoint,
  strongestForceOf,
  type TrialView,
  viewTrial,
} from '../../../../src/ui/band/frame/trialView.ts';
import { badSupports } from '../../../../src/ui/band/frame/useBandFrame.ts';
import { seriesPlaces } from '../../../../src/ui/band/margin/seriesPlaces.ts';
import { sample, sceneOf } from '../../../scene/sample.ts';

interface Solved {
  readonly trial: CompiledTrial;
  readonly result: TrialResult;
  readonly view: TrialView;
}

async function solve(ends: object): Promise<Solved> {
  const [first] = sample.trials;
  const scene = sceneOf({ ...sample, trials: [{ ...first, ...ends }] });
  const trial = compileTrial(compileScene(scene), first.id);
  const result = await runTrial(trial);
  return { trial, result, view: viewTrial(trial, result) };
}

let forward: Solved;
let back: Solved;
beforeAll(async () => {
  forward = await solve({ towards: 'end' });
  back = await solve({ towards: 'start', startMm: 5000, finishMm: 100 });
}, 60_000);

describe('a trial as the band sees it', () => {
  test('joints stand where the risks place them, whichever way the train goes', () => {
    for (const { trial, result, view } of [forward, back]) {
      const exact = result.risks.find((series) => series.subjects === view.motion?.joints.length);
      expect(exact).toBeDefined();
      if (!exact || !view.motion) return;
      const places = seriesPlaces(exact, trial.path);
      for (const [joint, along] of view.motion.joints.entries()) {
        // Along the bodies instead of along the curve: less than half a millimetre in a 1 m curve.
        for (let f = 0; f < along.length; f += 7) expect(Math.abs(along[f] - places[joint][f])).toBeLessThan(5e-4);
      }
    }
  });

  test('its track is the one of the scene, also for a train that runs back along it', () => {
    expect(forward.trial.path.reversed).toBe(false);
    expect(back.trial.path.reversed).toBe(true);
    for (const s of [0, 1.1, 2.5, 4.4, 6]) {
      expect(trackPoint(back.view.track, s).z).toBeCloseTo(trackPoint(forward.view.track, s).z, 9);
      expect(trackPoint(back.view.track, s).grade).toBeCloseTo(trackPoint(forward.view.track, s).grade, 9);
    }
    const [joint] = back.view.motion!.joints;
    expect(joint[0]).toBeGreaterThan(joint.at(-1)!);
  });

  test('a peak between frames counts, and only a joint that bore nothing is slack', () => {
    const run = {
      frames: 3,
      vehicles: 2,
      force: Float64Array.of(0, 0.1, -0.1),
      draftPeak: Float64Array.of(0, 0.3, 0),
      buffPeak: Float64Array.of(0, -0.2, -0.5),
    } as unknown as TrialResult['run'];
    expect([...strongestByJoint(run)[0]]).toEqual([0, 0.3, -0.5]);
  });

  test('no force is beyond the end of the scale, and the strongest is found', () => {
    const { view } = forward;
    const best = strongestForceOf(view, null)!;
    const size = Math.abs(view.forces[best.joint][best.frame]);
    for (const joint of view.forces) for (const force of joint) expect(Math.abs(force)).toBeLessThanOrEqual(size);
    expect(view.greatestForce).toBeGreaterThanOrEqual(size);
    expect(strongestForceOf(view, 1)?.joint).toBe(1);
  });

  test('without a run there is a track and nothing on it', () => {
    const view = viewTrial(forward.trial, null);
    expect(view.motion).toBeNull();
    expect(view.forces).toEqual([]);
    expect(view.track.length).toBeCloseTo(6, 9);
  });
});

describe('supports to blame', () => {
  test('are those failing findings name, the chosen finding first, each once', () => {
    const cause = (support: number, departure: number) => ({ kind: 'support-off', support, departure }) as const;
    const findings = [
      { verdict: 'fails', causes: [cause(2, 0.0015)] },
      { verdict: 'fails', causes: [cause(4, -0.001), cause(2, 0.0015)] },
      { verdict: 'near', causes: [cause(6, 0.001)] },
    ];
    const view = { ...forward.view, result: { ...forward.result, findings } as unknown as TrialResult };
    expect(badSupports(view, null).map(({ support }) => support)).toEqual([2, 4]);
    expect(badSupports(view, 1).map(({ support }) => support)).toEqual([4, 2]);
    expect(badSupports(view, null)[0].chainage).toBeCloseTo(0.6, 9);
  });
});

describe('going along the axis', () => {
  const frameOf = ({ view }: Solved, kind: 'chainage' | 'time'): BandFrame =>
    ({
      view,
      reference: view.motion!.joints[0],
      axis: { kind, span: { from: 0, to: kind === 'time' ? view.motion!.time.at(-1)! : 6 }, width: 600 },
    }) as unknown as BandFrame;
  const placeAt = (solved: Solved, time: number) =>
    valueBetween(solved.view.motion!.joints[0], frameAt(solved.view.motion!.time, time));

  test('a press goes to the moment the joint pressed is there', () => {
    for (const solved of [forward, back]) {
      const frame = frameOf(solved, 'chainage');
      expect(placeAt(solved, timeAtX(frame, frame.axis, 300, 0)!)).toBeCloseTo(3, 6);
      const other = timeAtX(frame, frame.axis, 300, 0, 1)!;
      expect(valueBetween(solved.view.motion!.joints[1], frameAt(solved.view.motion!.time, other))).toBeCloseTo(3, 6);
    }
    const inTime = frameOf(forward, 'time');
    expect(timeAtX(inTime, inTime.axis, 300, 0)).toBeCloseTo(forward.view.motion!.time.at(-1)! / 2, 9);
    expect(timeAtX(inTime, inTime.axis, -50, 0)).toBe(0);
  });

  test('right is right on the screen, also for a train that comes from there', () => {
    for (const solved of [forward, back]) {
      const frame = frameOf(solved, 'chainage');
      const now = timeAtX(frame, frame.axis, 300, 0)!;
      expect(placeAt(solved, timeOneCell(frame, now, 1)!)).toBeCloseTo(3.01, 6);
      expect(placeAt(solved, timeOneCell(frame, now, -1)!)).toBeCloseTo(2.99, 6);
    }
  });

  test('with Shift from support to support', () => {
    for (const solved of [forward, back]) {
      const frame = frameOf(solved, 'chainage');
      const now = timeAtX(frame, frame.axis, 300, 0)!;
      // Supports every 300 mm; the playhead stands on one of them.
      const right = timeNextSupport(frame, now, 1)!;
      expect(placeAt(solved, right)).toBeCloseTo(3.3, 6);
      expect(placeAt(solved, timeNextSupport(frame, right, -1)!)).toBeCloseTo(3, 6);
      const inTime = frameOf(solved, 'time');
      const later = timeNextSupport(inTime, now + 1e-3, 1)!;
      expect(later).toBeGreaterThan(now);
      expect(placeAt(solved, later)).toBeCloseTo(solved === forward ? 3.3 : 2.7, 5);
    }
  });

  test('Home and End go to the ends of what the joint covers', () => {
    const frame = frameOf(back, 'chainage');
    const places = back.view.motion!.joints[0];
    expect(placeAt(back, timeAtEnd(frame, 1)!)).toBe(Math.max(...places));
    expect(placeAt(back, timeAtEnd(frame, -1)!)).toBe(Math.min(...places));
    expect(timeAtEnd(frameOf(back, 'time'), 1)).toBe(back.view.motion!.time.at(-1));
  });
});

describe('a route', () => {
  const [{ track: _track, towards: _towards, ...rest }] = sample.trials;
  const route = [{ track: 'line', towards: 'start', fromMm: 5800 }];
  const trial = compileTrial(
    compileScene(sceneOf({ ...sample, trials: [{ ...rest, startMm: 900, finishMm: 5700, route }] })),
    'up',
  );
  const { track } = viewTrial(trial, null);

  test('is drawn along itself: grades and supports of its tracks at their places, numbers kept', () => {
    // Support 3 stands at 600 mm of the line, 5200 mm from where the route begins; the grades meet at 2000 mm, 3800 mm along.
    const supports = track.spec.profile.strip?.supports ?? [];
    const high = supports.filter(({ departure }) => departure !== 0);
    expect(high).toEqual([{ chainage: expect.closeTo(5.2, 12), departure: 0.0015, number: 2 }]);
    expect(supports.map(({ chainage }) => chainage)).toEqual(
      supports.map(({ chainage }) => chainage).sort((a, b) => a - b),
    );
    const [begin, meet, end] = track.spec.profile.points;
    expect(meet.chainage).toBeCloseTo(3.8, 12);
    expect(begin).toMatchObject({ chainage: 0, height: expect.closeTo((0.08 * 3.8) / 4, 12) });
    expect(end).toMatchObject({ chainage: expect.closeTo(5.8, 12), height: expect.closeTo(0, 12) });
  });

  test('marks the support that a finding blames by the leg that is on its track', () => {
    const finding = {
      verdict: 'fails',
      causes: [{ kind: 'support-off', support: 2, departure: 0.0015, leg: 0 }],
    } as unknown as TrialResult['findings'][number];
    const view = { ...viewTrial(trial, null), result: { findings: [finding] } as unknown as TrialResult };
    expect(badSupports(view, null)).toEqual([
      { support: 2, leg: 0, chainage: expect.closeTo(5.2, 12), departure: 0.0015 },
    ]);
  });
});
