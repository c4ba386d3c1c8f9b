import { describe, expect, it } from 'vitest';
import { namedStops, putTour, type SceneTourView } from '../../../src/scene/index.ts';
import { createSession } from '../../../src/state/index.ts';
import { stopOnShow, verdictOfStop } from '../../../src/state/show/index.ts';
import { finding, heldHost, resultOf, sceneForTests } from '../fakeHost.ts';

const [first, second] = sceneForTests().trials;

/** Three stops: the whole, a joint played for two seconds, and another trial. */
const stops = namedStops([
  { title: 'Whole', view: { kind: 'whole' } },
  { title: 'Joint', view: { kind: 'lens', joint: 2 }, atS: 3, tillS: 5, risk: 'override' },
  { title: 'Other', view: { kind: 'follow', joint: 1 }, trial: second.id, atS: 2 },
]);

async function opened(tour = stops) {
  const { host, asked } = heldHost();
  const made = createSession(host);
  const scene = putTour(sceneForTests(), tour);
  const opening = made.actions.openScene(scene);
  await asked[0].answer(resultOf(first.id, [finding({ time: 4 })]));
  await opening;
  const state = () => made.session.getState();
  const moment = () => made.playback.getState();
  /** Lets the clock run, a tenth of a second at a time. */
  const wait = (seconds: number) => {
    for (let tick = 0; tick < Math.round(seconds * 10); tick++) made.actions.tick(0.1);
  };
  return { ...made, asked, state, moment, wait };
}

/** Longer than a view takes to come to rest, and than an audience is given at these stops, s. */
const arrived = 2;
const read = 5;

describe('a stop', () => {
  it('is gone to: its moment, its view, its joint, and the finding it tells of', async () => {
    const { actions, state, moment } = await opened();
    await actions.goToStop('joint');
    expect(moment()).toMatchObject({ time: 3, playing: false });
    expect(state()).toMatchObject({
      camera: 'walk',
      lens: { open: true, view: 'side' },
      chosenFinding: 0,
      tour: { stop: 'joint', went: 1, told: true },
    });
    // The scene counts joints from 1.
    expect(state().chosenJoint).toBe(1);
    await actions.goToStop('whole');
    expect(state()).toMatchObject({ lens: { open: false }, chosenFinding: null, chosenJoint: null });
    expect(state().tour.went).toBe(2);
  });

  it('plays its stretch once the view is there, and stands at its end', async () => {
    const { actions, moment, wait } = await opened();
    await actions.goToStop('joint');
    wait(1);
    expect(moment().playing).toBe(false);
    wait(1);
    expect(moment().playing).toBe(true);
    // Under the lens a second takes twenty.
    wait(45);
    expect(moment()).toMatchObject({ time: 5, playing: false });
    actions.playStop();
    expect(moment()).toMatchObject({ time: 3, playing: true });
    actions.playStop();
    expect(moment().playing).toBe(false);
  });

  it('of another trial is come to when that is solved', async () => {
    const { actions, asked, state, moment } = await opened();
    const going = actions.goToStop('other');
    expect(state().trialId).toBe(second.id);
    expect(state().tour).toMatchObject({ stop: 'other', went: 0 });
    await asked[1].answer(resultOf(second.id));
    await going;
    expect(state()).toMatchObject({ camera: 'follow', tour: { went: 1 } });
    expect(moment().time).toBe(2);
  });

  it('that was overtaken while its trial was solved is not come to', async () => {
    const { actions, asked, state } = await opened();
    const going = actions.goToStop('other');
    const back = actions.goToStop('whole');
    await asked[1].answer(resultOf(second.id));
    await Promise.all([going, back]);
    expect(state().tour).toMatchObject({ stop: 'whole', went: 1 });
  });

  it('tells of its check, and of the whole trial where it names none', async () => {
    const { actions, state } = await opened();
    await actions.goToStop('joint');
    const on = stopOnShow(state());
    expect(on?.index).toBe(1);
    expect(verdictOfStop(state(), stops[1])).toMatchObject({ standing: 'fails', word: 'Fails.', ofTrial: false });
    // 1.9 mm where 1.5 mm hold.
    expect(verdictOfStop(state(), stops[1])?.margin).toMatch(/^−0\.4\smm$/u);
    expect(verdictOfStop(state(), stops[0])).toMatchObject({ standing: 'fails', ofTrial: true });
  });
});

describe('a tour', () => {
  it('goes from stop to stop by itself, and ends at the last', async () => {
    const { actions, asked, state, wait } = await opened();
    actions.runTour();
    expect(state().tour).toMatchObject({ stop: 'whole', running: true });
    wait(arrived + read);
    expect(state().tour.stop).toBe('joint');
    wait(arrived + 40 + read);
    expect(state().trialId).toBe(second.id);
    await asked[1].answer(resultOf(second.id));
    expect(state().tour).toMatchObject({ stop: 'other', running: true });
    wait(arrived + read);
    expect(state().tour).toMatchObject({ stop: 'other', running: false });
  });

  it('is held where it is', async () => {
    const { actions, state, wait } = await opened();
    actions.runTour();
    wait(arrived);
    actions.holdTour();
    wait(60);
    expect(state().tour).toMatchObject({ stop: 'whole', running: false });
  });

  it('ends with the railway, and a stop taken out is on show no more', async () => {
    const { actions, state } = await opened();
    await actions.goToStop('joint');
    expect(actions.removeStop('joint')).toBeNull();
    expect(state().tour.stop).toBeNull();
    await actions.goToStop('whole');
    actions.present();
    void actions.openScene(sceneForTests());
    expect(state().tour).toMatchObject({ stop: null, presenting: false, running: false });
  });
});

describe('before an audience', () => {
  it('it is gone on and back, not beyond either end', async () => {
    const { actions, state } = await opened(stops.slice(0, 2));
    actions.present();
    expect(state().tour).toMatchObject({ presenting: true, stop: 'whole' });
    actions.nextStop();
    expect(state().tour.stop).toBe('joint');
    actions.nextStop();
    expect(state().tour.stop).toBe('joint');
    actions.previousStop();
    actions.previousStop();
    expect(state().tour.stop).toBe('whole');
    actions.stopPresenting();
    expect(state()).toMatchObject({ lens: { open: false }, tour: { presenting: false, stop: 'whole' } });
  });

  it('that guesses first the verdict is covered at every stop, and told before it goes on', async () => {
    const { actions, state, wait } = await opened(stops.slice(0, 2));
    actions.setGuessFirst(true);
    actions.present();
    expect(state().tour).toMatchObject({ stop: 'whole', told: false });
    actions.nextStop();
    expect(state().tour).toMatchObject({ stop: 'whole', told: true });
    actions.nextStop();
    expect(state().tour).toMatchObject({ stop: 'joint', told: false });
    // By itself too it is told only when there was time to guess.
    await actions.goToStop('whole');
    actions.runTour();
    wait(3);
    expect(state().tour.told).toBe(false);
    wait(2);
    expect(state().tour).toMatchObject({ stop: 'whole', told: true });
    wait(6);
    expect(state().tour).toMatchObject({ stop: 'joint', told: false });
  });
});

describe('making a tour', () => {
  it('is proposed in one step, and undone in one', async () => {
    const { actions, state } = await opened([]);
    const before = state().scene;
    expect(actions.proposeTour()).toBeNull();
    expect(state().scene?.tour?.map(({ view }) => view.kind)).toEqual(['whole', 'lens', 'follow']);
    expect(state().progress).toBeNull();
    await actions.undo();
    expect(state().scene).toBe(before);
    await actions.redo();
    expect(state().scene?.tour).toHaveLength(3);
  });

  it('takes what the stage shows, at the moment on show, behind the stop on show', async () => {
    const { actions, state, sight } = await opened();
    expect(actions.addView()).not.toBeNull();
    const seen: SceneTourView = { kind: 'down' };
    sight.take = () => seen;
    await actions.goToStop('whole');
    actions.seek(6.257);
    expect(actions.addView()).toBeNull();
    expect(state().scene?.tour?.[1]).toEqual({
      id: 'view-4',
      title: 'View 4',
      view: seen,
      trial: first.id,
      atS: 6.26,
    });
    expect(state().tour.stop).toBe('view-4');
    expect(actions.changeStop('view-4', 'title', { title: 'From above' })).toBeNull();
    expect(actions.moveStop('view-4', 1)).toBeNull();
    expect(state().scene?.tour?.map(({ title }) => title)).toEqual(['Whole', 'Joint', 'From above', 'Other']);
    actions.seek(1);
    sight.take = () => ({ kind: 'eye' });
    expect(actions.retakeView('view-4')).toBeNull();
    expect(state().scene?.tour?.[2]).toMatchObject({ title: 'From above', view: { kind: 'eye' }, atS: 1 });
  });

  it('takes the joint under the lens where that is open', async () => {
    const { actions, state, sight } = await opened();
    sight.take = () => ({ kind: 'whole' });
    actions.chooseJoint(1);
    actions.openLens('above');
    actions.addView();
    expect(state().scene?.tour?.at(-1)?.view).toEqual({ kind: 'lens', joint: 2, from: 'above' });
  });
});
