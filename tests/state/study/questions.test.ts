import { describe, expect, it } from 'vitest';
import { compileScene, compileTrial, createInProcessHost } from '../../../src/sim/index.ts';
import { createInProcessBestHost } from '../../../src/sim/study/bestHost.ts';
import { createProbePool } from '../../../src/sim/study/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { createStudies, knobAt, knobGroups } from '../../../src/state/study/index.ts';
import { propelledTrials } from '../../../src/state/study/propelled.ts';
import { uncertainOf } from '../../../src/state/study/tolerances.ts';
import { bundledScene } from '../../scene/sample.ts';

const throat = bundledScene('10-rushbeck-throat.json');

async function opened(trialId: string) {
  const session = createSession(createInProcessHost());
  await session.actions.openScene(throat, { from: 'program', name: throat.name }, trialId);
  return {
    session,
    ...createStudies(session, createProbePool([createInProcessHost()]), createInProcessBestHost()),
  };
}

describe('knobs', () => {
  it('begin with all easements of a track, as long as its bends have room for', () => {
    const knob = knobAt(throat, 'tracks/eased-300/easements');
    expect(knob?.value).toBe(300);
    // Two bends of 600 mm and 45 degrees: arcs of 471.2 mm, of which 1 mm stays.
    expect(knob?.most).toBe(470);
    expect(knobAt(throat, 'tracks/bare/easements')?.value).toBe(0);
    expect(knobAt(bundledScene('09-foxglove-ramp.json'), 'tracks/ramp/easements')).toBeNull();
    expect(
      knobGroups(throat)
        .flatMap(({ knobs }) => knobs)
        .map(({ at }) => at),
    ).toContain('stock/coach/massG');
  });
});

describe('trains propelled over a track', () => {
  it('are those of the file, and the others turned about', () => {
    expect(propelledTrials(throat, ['eased-300']).trialIds).toEqual(['eased-300-propelled']);
    const bank = bundledScene('07-thistledown-bank.json');
    const pulled = { ...bank, trials: bank.trials.filter(({ id }) => id.startsWith('pulled')) };
    const { scene, trialIds } = propelledTrials(pulled, ['bank']);
    expect(trialIds).toHaveLength(2);
    for (const id of trialIds) expect(compileTrial(compileScene(scene), id).propelled).toBe(true);
    expect(new Set(trialIds.map((id) => scene.trials.find((one) => one.id === id)?.towards))).toEqual(
      new Set(['start', 'end']),
    );
  });
});

describe('the shortest easement', () => {
  it('lies between what fails and what passes by the study of easements, and passes in full', async () => {
    const { study, actions } = await opened('eased-300-propelled');
    await actions.askEasement();
    const { sweep, problem } = study.getState();
    expect(problem).toBeNull();
    // docs/studies/easement.md: in full 100 mm locks by 3.0 mm and 200 mm leaves 0.4 mm.
    expect(sweep?.question?.full).toBeGreaterThan(100);
    expect(sweep?.question?.full).toBeLessThanOrEqual(200);
    expect(sweep?.line?.whole).toBe(true);
  });
});

describe('what may be off', () => {
  it('is every head by itself, every support, every mass, on trains written out', () => {
    const gill = bundledScene('01-wren-gill.json');
    const ask = { heads: true, supportsMm: 0.5, massPercent: 10 };
    const { scene, uncertain } = uncertainOf(gill, ['propelled-down'], ask);
    const train = scene.trains.find(({ id }) => id === gill.trials[0].train);
    const vehicles = train?.vehicles.length ?? 0;
    expect(train?.vehicles.every(({ count }) => count === undefined)).toBe(true);
    const heads = uncertain.filter(({ at }) => at.includes('headHeightOffMm'));
    const masses = uncertain.filter(({ at }) => at.endsWith('massG'));
    const supports = uncertain.filter(({ at }) => at.includes('/supports/'));
    expect(heads).toHaveLength(2 * vehicles);
    expect(masses).toHaveLength(vehicles);
    expect(supports.length).toBeGreaterThan(10);
    // A support that is off is drawn about where it is, a vehicle's mass about its own.
    expect(supports.every(({ low, high }) => Math.abs(high - low - 1) < 1e-9)).toBe(true);
    for (const { low, high } of masses) expect((high - low) / (high + low)).toBeCloseTo(0.1, 9);
    expect(uncertainOf(gill, ['propelled-down'], { heads: false, supportsMm: 0, massPercent: 0 }).uncertain).toEqual(
      [],
    );
  });
});

describe('a railway beside another', () => {
  it('is the same trial solved on the variant; it follows the trial, and goes when the variant goes', async () => {
    const { session, study, actions } = await opened('eased-300-propelled');
    await actions.addVariant('450', [{ at: 'tracks/eased-300/easements', to: 450 }]);
    await actions.showBeside('450');
    const { beside, trial } = session.session.getState();
    expect(beside?.trial.id).toBe(trial?.id);
    // The line is longer by 150 mm for each pair of easements that touch, less what the straights gave.
    expect(beside?.trial.path.track.length).not.toBeCloseTo(trial?.path.track.length ?? 0, 3);
    expect(beside?.result.findings.length).toBeGreaterThan(0);
    await actions.dropVariant('450');
    expect(session.session.getState().beside).toBeNull();
    expect(study.getState().beside).toBeNull();
  });

  it('can be made of the last change, which the railway then is without', async () => {
    const { session, actions } = await opened('eased-300-propelled');
    const before = session.session.getState().scene?.deck.thicknessMm;
    await session.actions.change('thicker deck', (scene) => ({ ...scene, deck: { ...scene.deck, thicknessMm: 12 } }));
    expect(await actions.keepLastChange()).toBe(true);
    const { scene } = session.session.getState();
    expect(scene?.deck.thicknessMm).toBe(before);
    expect(scene?.variants).toEqual([
      { id: 'thicker-deck', name: 'Thicker deck', changes: [{ at: 'deck/thicknessMm', to: 12 }] },
    ]);
  });
});
