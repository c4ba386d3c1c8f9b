import { describe, expect, it } from 'vitest';
import { type Scene, trackIdsOf } from '../../../src/scene/index.ts';
import { compileScene, compileTrial, createInProcessHost } from '../../../src/sim/index.ts';
import { createInProcessBestHost } from '../../../src/sim/study/bestHost.ts';
import { createProbePool, tracksUnder } from '../../../src/sim/study/index.ts';
import { takesOf } from '../../../src/sim/study/takes.ts';
import { createSession } from '../../../src/state/index.ts';
import { createStudies } from '../../../src/state/study/createStudies.ts';
import { knobAt } from '../../../src/state/study/knobs.ts';
import { propelledTrials } from '../../../src/state/study/propelled.ts';
import { uncertainOf } from '../../../src/state/study/tolerances.ts';
import { bundledScene, sample, sceneOf } from '../../scene/sample.ts';

/** The sample line with a branch off its last straight, and a trial that is pulled from the one onto the other. */
function branched(): Scene {
  const [line] = sample.tracks;
  return sceneOf({
    ...sample,
    tracks: [
      { ...line, profile: [{ atMm: 0, heightMm: 0 }] },
      {
        id: 'spur',
        name: 'Spur',
        start: {
          branchOf: 'line',
          atMm: 4500,
          towards: 'end',
          turnout: { hand: 'left', radiusMm: 1200, gaugeMm: 16.5, frontMm: 20, heelMm: 0 },
        },
        alignment: [
          { kind: 'straight', lengthMm: 800 },
          { kind: 'arc', radiusMm: 900, turn: 'right', lengthMm: 700 },
          { kind: 'straight', lengthMm: 1000 },
        ],
        profile: [{ at: { endOf: 'track' }, heightMm: 0 }],
        supports: { everyMm: 300 },
      },
    ],
    trials: [
      {
        id: 'across',
        name: 'Across',
        route: [
          { track: 'line', towards: 'end' },
          { track: 'spur', towards: 'end' },
        ],
        train: 'train',
        leading: 'first',
        timeLimitS: 60,
        orders: [{ atS: 0, setting: 0.5 }],
      },
    ],
  });
}

async function opened(scene: Scene, trialId: string) {
  const session = createSession(createInProcessHost());
  await session.actions.openScene(scene, { from: 'program', name: scene.name }, trialId);
  return {
    session,
    ...createStudies(session, createProbePool([createInProcessHost()]), createInProcessBestHost()),
  };
}

const throat = bundledScene('11-curlew-throat.json');

describe('a trial over several tracks', () => {
  it('is put to the same trial propelled, over its own route', () => {
    const { scene, trialIds } = propelledTrials(branched(), ['spur']);
    expect(trialIds).toHaveLength(1);
    const trial = scene.trials.find(({ id }) => id === trialIds[0]);
    expect(trial?.leading).toBe('last');
    expect(trial && trackIdsOf(trial)).toEqual(['line', 'spur']);
    expect(compileTrial(compileScene(scene), trialIds[0]).propelled).toBe(true);
    // Of the throat: those that use the down road are the short crossover's, both ways.
    expect(propelledTrials(throat, ['down']).trialIds).toEqual(['short-propelled', 'short-back-propelled']);
  });

  it('takes what all its tracks take, laid together', () => {
    const scene = branched();
    const costs = takesOf(compileScene(scene), tracksUnder(scene, ['across']));
    const compiled = compileScene(scene);
    const lengths = ['line', 'spur'].map((id) => compiled.tracks.get(id)?.length ?? Number.NaN);
    expect(costs?.length).toBeCloseTo(lengths[0] + lengths[1], 9);
    expect(costs?.tightest).toBeCloseTo(0.9, 6);
    expect(takesOf(compiled, [])).toBeNull();
    // Up and down road lie 39.946 mm apart, 4.8 m long: their room together is not that of either.
    const both = takesOf(compileScene(throat), tracksUnder(throat, ['short-propelled']));
    expect(both?.width).toBeCloseTo(4.8, 6);
    expect(both?.depth).toBeCloseTo(0.039946186, 6);
    expect(both?.tightest).toBeCloseTo(0.914, 6);
  });

  it('may be off at the supports under its way, each by the name of its track', () => {
    const scene = branched();
    const { uncertain } = uncertainOf(scene, ['across'], { heads: false, supportsMm: 0.5, massPercent: 0 });
    const of = (name: string) => uncertain.filter(({ words }) => words.endsWith(` of ${name}`));
    expect(of('Spur').length).toBeGreaterThan(5);
    expect(of('Line').length + of('Spur').length).toBe(uncertain.length);
    // Supports every 300 mm; the way leaves the line at 4500 mm, support 16, so 18 is the last that tells: two beyond.
    expect(of('Line').at(-1)?.words).toBe('support 18 of Line');
    expect(of('Line')).toHaveLength(18);
    for (const { at } of uncertain) expect(at).toMatch(/^tracks\/(line|spur)\/supports\/off\/\d+\/byMm$/);
    // Where it is off by now is the middle of what it may be off by.
    const third = uncertain.find(({ words }) => words === 'support 3 of Line');
    expect([third?.low, third?.high]).toEqual([1, 2]);
  });

  it('has one knob for all its easements, which turns those of every track it runs over', () => {
    const scene = branched();
    const knob = knobAt(scene, 'trials/across/easements');
    expect(knob?.value).toBe(0);
    // The arcs of the line are 1000 mm long: a double easement between them and one at either end take at most all but a trace.
    expect(knob?.most).toBeGreaterThan(600);
    expect(knobAt(throat, 'trials/short-propelled/easements')).toBeNull();
  });

  it('is asked for the shortest easement on all its tracks alike', async () => {
    const { study, actions, session } = await opened(branched(), 'across');
    await actions.askEasement();
    const { sweep, problem } = study.getState();
    expect(problem).toBeNull();
    expect(sweep?.ask.at).toBe('trials/across/easements');
    expect(sweep?.trialIds).toHaveLength(1);
    expect(sweep?.points.some(({ probe }) => probe.ok)).toBe(true);
    expect(await actions.addVariant('Eased', [{ at: 'trials/across/easements', to: 200 }])).toBe(true);
    const variant = session.session.getState().scene?.variants?.[0];
    const tracks = new Set(variant?.changes.map(({ at }) => at.split('/')[1]));
    expect(tracks).toEqual(new Set(['line', 'spur']));
  });

  it('is told how sure it is, and how steep its engine climbs in its tightest curve', async () => {
    const { study, actions } = await opened(branched(), 'across');
    await actions.chance({ heads: true, supportsMm: 0.5, massPercent: 0, draws: 10 });
    expect(study.getState().problem).toBeNull();
    expect(study.getState().chance?.trials.map(({ trialId }) => trialId)).toEqual(['across']);
    await actions.askSteepest(2);
    const { grade, problem } = study.getState();
    expect(problem).toBeNull();
    expect(grade?.curve?.radiusMm).toBe(900);
    expect(grade?.straight?.passesPercent).toBeGreaterThan(0);
  });
});
