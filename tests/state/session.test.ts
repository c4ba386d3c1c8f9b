import { describe, expect, it } from 'vitest';
import { createSession } from '../../src/state/index.ts';
import { finding, heldHost, resultOf, sceneForTests, settle } from './fakeHost.ts';

/** A session with its first trial solved. */
async function opened(findings = [finding()]) {
  const { host, asked } = heldHost();
  const made = createSession(host);
  const scene = sceneForTests();
  const opening = made.actions.openScene(scene);
  await asked[0].answer(resultOf(scene.trials[0].id, findings));
  await opening;
  return { ...made, scene, asked, state: () => made.session.getState() };
}

describe('opening a scene', () => {
  it('shows its track and train at once and the result when it is solved', async () => {
    const { host, asked } = heldHost();
    const { session, playback, actions } = createSession(host);
    const scene = sceneForTests();
    void actions.openScene(scene);
    expect(session.getState()).toMatchObject({ scene, result: null, progress: 0, trialId: scene.trials[0].id });
    expect(session.getState().trial?.id).toBe(scene.trials[0].id);
    asked[0].hooks.onProgress?.(0.4);
    expect(session.getState().progress).toBe(0.4);
    const result = resultOf(scene.trials[0].id);
    await asked[0].answer(result);
    expect(session.getState()).toMatchObject({ result, progress: null });
    expect(playback.getState()).toMatchObject({ duration: 10, time: 0 });
  });

  it('explains a bad file and keeps what was open', async () => {
    const { actions, state, scene } = await opened();
    const before = state();
    await actions.openFileText('broken.json', '{ "gradewright": 1, "name": 7 }');
    expect(state()).toMatchObject({ scene, compiled: before.compiled, trial: before.trial, result: before.result });
    expect(state().problem?.title).toContain('broken.json');
    const place = state().problem?.places?.find(({ path }) => path === 'name');
    expect(place).toMatchObject({ found: '7' });
    expect(place?.allowed).not.toBe('');
    expect(place?.example).not.toBe('');
    actions.dismissProblem();
    expect(state().problem).toBeNull();
  });

  it('refuses a scene that cannot be laid and keeps what was open', async () => {
    const { actions, state, scene, asked } = await opened();
    // Not a scene that a file could bring in, but one that an edit might: the track has no profile at all.
    const broken = { ...scene, tracks: scene.tracks.map((track) => ({ ...track, profile: [] })) };
    await actions.openScene(broken, { from: 'file', name: 'broken' });
    expect(state().scene).toBe(scene);
    expect(state().result).not.toBeNull();
    expect(state().problem?.title).toContain('broken');
    expect(asked).toHaveLength(1);
  });
});

describe('runs', () => {
  it('cancels: nothing runs, the last solved state stays', async () => {
    const { actions, state, scene, asked } = await opened();
    const solved = state().result;
    void actions.setSetting(0.2);
    expect(state().progress).toBe(0);
    actions.cancel();
    await settle();
    expect(asked[1].hooks.signal?.aborted).toBe(true);
    expect(state()).toMatchObject({ progress: null, problem: null, result: solved });
    expect(state().compiled?.scene).toBe(scene);
    expect(state().scene).not.toBe(scene);
  });

  it('says what the solver said when a run fails, and keeps the last solved state', async () => {
    const { actions, state, asked } = await opened();
    const solved = state().result;
    void actions.setSetting(0.2);
    await asked[1].fail(new RangeError('The train is longer than the track'));
    expect(state()).toMatchObject({ progress: null, result: solved });
    expect(state().problem?.lines).toEqual(['The train is longer than the track']);
  });

  it('listens to the newest run only', async () => {
    const { actions, state, asked, scene } = await opened();
    void actions.setSetting(0.2);
    void actions.setSetting(0.3);
    expect(asked[1].hooks.signal?.aborted).toBe(true);
    asked[1].hooks.onProgress?.(0.9);
    expect(state().progress).toBe(0);
    const late = resultOf(scene.trials[0].id);
    await asked[2].answer(late);
    expect(state().result).toBe(late);
  });
});

describe('undo', () => {
  it('takes back and brings again one edit, naming it, without solving what was solved', async () => {
    const { actions, state, history, scene, asked } = await opened();
    const first = state().result;
    const editing = actions.setSetting(0.2);
    const second = resultOf(scene.trials[0].id);
    await asked[1].answer(second);
    await editing;
    const edited = state().scene;
    expect(history.getState().past.map(({ label }) => label)).toEqual(['setting to 20\u2009%']);
    await actions.undo();
    expect(state()).toMatchObject({ scene, result: first });
    expect(history.getState().future).toHaveLength(1);
    await actions.redo();
    expect(state()).toMatchObject({ scene: edited, result: second });
    expect(history.getState().past).toHaveLength(1);
    expect(asked.filter(({ cure }) => cure === null)).toHaveLength(2);
  });

  it('makes one step of a gesture, however many changes it has', async () => {
    const { actions, state, history, scene } = await opened();
    actions.beginGesture();
    for (const setting of [0.2, 0.25, 0.3]) void actions.setSetting(setting);
    actions.settleGesture();
    expect(history.getState().past.map(({ label }) => label)).toEqual(['setting to 30\u2009%']);
    await actions.undo();
    expect(state().scene).toBe(scene);
    expect(history.getState().past).toHaveLength(0);
  });

  it('makes no step of a gesture that was let go or that changed nothing', async () => {
    const { actions, state, history, scene } = await opened();
    actions.beginGesture();
    void actions.setSetting(0.2);
    actions.bailGesture();
    expect(state().scene).toBe(scene);
    actions.beginGesture();
    actions.settleGesture();
    expect(history.getState().past).toHaveLength(0);
  });

  it('forgets what was undone once something else is done', async () => {
    const { actions, history } = await opened();
    void actions.setSetting(0.2);
    await actions.undo();
    void actions.setSetting(0.3);
    expect(history.getState().future).toHaveLength(0);
    expect(history.getState().past).toHaveLength(1);
  });
});

describe('findings and moments', () => {
  it('goes to a finding: its time, its joint, standing still', async () => {
    const { actions, state, playback } = await opened();
    actions.play();
    actions.seekToFinding(0);
    expect(playback.getState()).toMatchObject({ time: 4, playing: false });
    expect(state()).toMatchObject({ chosenFinding: 0, chosenJoint: 1 });
  });

  it('chooses no joint for a finding about a vehicle', async () => {
    const { actions, state } = await opened([finding({ risk: 'headroom', subject: 2 })]);
    actions.seekToFinding(0);
    expect(state()).toMatchObject({ chosenFinding: 0, chosenJoint: null });
  });

  it('stops at events and findings, forward and back', async () => {
    const { actions, playback } = await opened();
    const times = [2, 4, 10];
    for (const time of times) {
      actions.nextEvent();
      expect(playback.getState().time).toBe(time);
    }
    actions.nextEvent();
    expect(playback.getState().time).toBe(10);
    actions.previousEvent();
    expect(playback.getState().time).toBe(4);
  });

  it('plays at its rate, not past the end, and again from the start', async () => {
    const { actions, playback } = await opened();
    actions.setRate(4);
    actions.play();
    actions.tick(0.05);
    expect(playback.getState().time).toBeCloseTo(0.2, 12);
    actions.seek(9.95);
    actions.tick(0.05);
    expect(playback.getState()).toMatchObject({ time: 10, playing: false });
    actions.toggle();
    expect(playback.getState()).toMatchObject({ time: 0, playing: true });
  });

  it('does not leap when the page slept', async () => {
    const { actions, playback } = await opened();
    actions.play();
    actions.tick(30);
    expect(playback.getState().time).toBeLessThan(0.5);
  });

  it('slows down while the lens is open, whoever opened it', async () => {
    const { actions, session, playback } = await opened();
    actions.openLens('above');
    expect(session.getState()).toMatchObject({ lens: { open: true, view: 'above' }, chosenJoint: 1 });
    expect(playback.getState().rate).toBe(1 / 20);
    session.setState({ lens: { open: false, view: 'above' } });
    expect(playback.getState().rate).toBe(1);
  });
});

describe('working', () => {
  it('chooses a trial that is there and adds one that is not', async () => {
    const { actions, state, scene, history } = await opened();
    const like = scene.trials[0];
    const turned = like.leading === 'first' ? 'last' : 'first';
    const there = scene.trials.find(
      (trial) =>
        trial.train === like.train &&
        trial.track === like.track &&
        trial.leading === turned &&
        trial.towards === like.towards,
    );
    void actions.setWorking({ leading: turned });
    if (there) {
      expect(state()).toMatchObject({ trialId: there.id, scene });
    } else {
      const added = state().scene?.trials.at(-1);
      expect(added).toMatchObject({ leading: turned, towards: like.towards, train: like.train, track: like.track });
      expect(state().trialId).toBe(added?.id);
      expect(history.getState().past).toHaveLength(1);
      await actions.undo();
      expect(state()).toMatchObject({ scene, trialId: like.id });
    }
  });
});
