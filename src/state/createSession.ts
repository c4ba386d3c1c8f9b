import { createStore, type StoreApi } from 'zustand/vanilla';
import type { RiskId } from '../core/risks/types.ts';
import { parseScene, type Scene } from '../scene/index.ts';
import { applyCure } from '../sim/index.ts';
import type { SimHost } from '../sim/types.ts';
import { wordsOf } from './aborting.ts';
import { createCureRounds } from './cureRounds.ts';
import { eventTimes, timeAfter, timeBefore } from './events.ts';
import { createHistory, type Present } from './history.ts';
import { timeAtPlace } from './places.ts';
import { createPlayback, type PlaybackActions } from './playback.ts';
import { findTrial, trialWorked, type Working, withSetting, withTrialWorked } from './trialEdits.ts';
import { createTrialRuns, prepare } from './trialRuns.ts';
import type {
  Axis,
  CameraName,
  Chapter,
  HistoryState,
  LensView,
  Opened,
  PlaybackState,
  Problem,
  SessionState,
} from './types.ts';
import { cureWords, isOfJoint, settingWords, trialWords } from './words.ts';

/** Playing speed while the lens is open: a head that rides up does it in a few hundredths of a second. */
const lensRate = 1 / 20;

export interface SessionActions extends PlaybackActions {
  /** Opens a scene at its first trial, or at the named one; the last good state stays when it cannot be compiled. */
  openScene(scene: Scene, opened?: Opened, trialId?: string): Promise<void>;
  /** Opens the text of a scene file; what is wrong with it goes to `problem` and nothing else changes. */
  openFileText(name: string, text: string): Promise<void>;
  chooseTrial(trialId: string): Promise<void>;
  /** Chooses the trial of the same train and track worked this way, or adds one to the scene. */
  setWorking(working: Partial<Working>): Promise<void>;
  /** Sets the running speed setting of the trial, above 0 to 1; one undo step unless a gesture is open. */
  setSetting(setting: number): Promise<void>;
  /** Opens a gesture: all edits until `settleGesture` are one undo step, all until `bailGesture` never were. */
  beginGesture(): void;
  settleGesture(): void;
  bailGesture(): void;
  /** Solves the trial again as the scene now is. */
  run(): Promise<void>;
  cancel(): void;
  /** Goes to a finding: its time, its place, its joint. */
  seekToFinding(index: number): void;
  /** Goes to the moment when the middle of the train is at a place, track chainage in m. */
  goToPlace(chainage: number): void;
  /** Joint index for the lens and the ride camera, or null for none. */
  chooseJoint(joint: number | null): void;
  nextEvent(): void;
  previousEvent(): void;
  setCamera(camera: CameraName): void;
  openLens(view?: LensView): void;
  closeLens(): void;
  setLensView(view: LensView): void;
  setAxis(axis: Axis): void;
  setLengthUnit(unit: SessionState['lengthUnit']): void;
  setGradeForm(form: SessionState['gradeForm']): void;
  setChapter(chapter: Chapter): void;
  setPalette(open: boolean): void;
  /** Shows a cure as a ghost beside what is; works it out first if need be. */
  tryCure(finding: number, cure: number): Promise<void>;
  /** Makes the ghost's cure part of the scene: one undo step. */
  keepCure(): void;
  dropGhost(): void;
  undo(): Promise<void>;
  redo(): Promise<void>;
  dismissProblem(): void;
  report(problem: Problem): void;
  dispose(): void;
}

export interface Session {
  readonly session: StoreApi<SessionState>;
  readonly playback: StoreApi<PlaybackState>;
  readonly history: StoreApi<HistoryState>;
  readonly actions: SessionActions;
}

const opening: SessionState = {
  scene: null,
  opened: null,
  savedAt: null,
  trialId: null,
  compiled: null,
  trial: null,
  result: null,
  progress: null,
  problem: null,
  chosenFinding: null,
  chosenJoint: null,
  cures: new Map(),
  ghost: null,
  camera: 'walk',
  lens: { open: false, view: 'side' },
  axis: 'chainage',
  lengthUnit: 'mm',
  gradeForm: 'one-in',
  chapter: 'trial',
  palette: false,
};

/** Makes the stores of one open railway and everything one can do to it. `host` solves the trials. */
export function createSession(host: SimHost): Session {
  const session = createStore<SessionState>(() => opening);
  const { playback, actions: play } = createPlayback();
  const history = createHistory();
  const cures = createCureRounds(session, host);
  const runs = createTrialRuns(session, host, (result) => {
    const duration = result.run.time.at(-1) ?? 0;
    playback.setState((now) => ({ duration, time: Math.min(now.time, duration) }));
    cures.start();
  });

  const present = (): Present | null => {
    const { scene, trialId } = session.getState();
    return scene && trialId ? { scene, trialId } : null;
  };
  const presentTrial = () => {
    const { scene, trialId } = session.getState();
    const trial = scene && trialId ? findTrial(scene, trialId) : null;
    return scene && trial ? { scene, trial } : null;
  };

  const complain = (title: string, error: unknown) => session.setState({ problem: { title, lines: [wordsOf(error)] } });

  /** Makes `next` the present and solves it. False, and nothing changed, when it cannot be compiled. */
  const become = (next: Present): { readonly done: Promise<void> } | null => {
    try {
      const prepared = prepare(next.scene, next.trialId);
      cures.cancel();
      session.setState({ ...next, ghost: null, problem: null });
      return { done: runs.solve(prepared) };
    } catch (error) {
      complain('This change cannot be made', error);
      return null;
    }
  };

  /** An edit: one undo step, or part of the open gesture. */
  const edit = async (label: string, next: Present): Promise<void> => {
    const before = present();
    if (!before) return;
    const became = become(next);
    if (!became) return;
    if (!history.marked(label)) history.record(label, before);
    await became.done;
  };

  const open = async (scene: Scene, opened: Opened, trialId: string): Promise<void> => {
    try {
      const prepared = prepare(scene, trialId);
      cures.cancel();
      runs.cancel();
      history.clear();
      playback.setState({ time: 0, duration: 0, playing: false });
      session.setState((now) => ({
        scene,
        trialId,
        opened,
        savedAt: null,
        ...prepared,
        result: null,
        problem: null,
        chosenFinding: null,
        chosenJoint: null,
        cures: new Map(),
        ghost: null,
        lens: { ...now.lens, open: false },
      }));
      await runs.solve(prepared);
    } catch (error) {
      complain(`“${opened.name}” cannot be used`, error);
    }
  };

  // The lens slows the playing down while it is open, whoever opened it.
  let rateOutside = playback.getState().rate;
  session.subscribe((now, before) => {
    if (now.lens.open === before.lens.open) return;
    if (now.lens.open) rateOutside = playback.getState().rate;
    playback.setState({ rate: now.lens.open ? lensRate : rateOutside });
  });

  const goToEvent = (pick: typeof timeAfter) => {
    const { result } = session.getState();
    const time = result && pick(eventTimes(result), playback.getState().time);
    if (time === null) return;
    play.pause();
    play.seek(time);
  };

  const actions: SessionActions = {
    ...play,
    openScene: (scene, opened = { from: 'program', name: scene.name }, trialId = scene.trials[0].id) =>
      open(scene, opened, scene.trials.some(({ id }) => id === trialId) ? trialId : scene.trials[0].id),
    async openFileText(name, text) {
      const parsed = parseScene(text);
      if (parsed.ok) {
        await open(parsed.scene, { from: 'file', name }, parsed.scene.trials[0].id);
        return;
      }
      session.setState({
        problem: { title: `“${name}” could not be opened`, lines: [], places: parsed.problems },
      });
    },
    async chooseTrial(trialId) {
      const now = present();
      if (!now || trialId === now.trialId) return;
      playback.setState({ time: 0 });
      await become({ scene: now.scene, trialId })?.done;
    },
    async setWorking(working) {
      const now = presentTrial();
      if (!now) return;
      const { scene, trial: like } = now;
      const wanted: Working = { leading: like.leading, towards: like.towards, ...working };
      const ready = trialWorked(scene, like, wanted);
      if (ready) {
        await actions.chooseTrial(ready.id);
        return;
      }
      const name = trialWords(scene, like, wanted);
      await edit(`“${name}”`, withTrialWorked(scene, like, wanted, name));
    },
    async setSetting(setting) {
      const now = presentTrial();
      if (!now) return;
      const { scene, trial } = now;
      const held = Math.min(Math.max(setting, 0.01), 1);
      await edit(settingWords(held), { scene: withSetting(scene, trial.id, held), trialId: trial.id });
    },
    beginGesture() {
      const before = present();
      if (before) history.mark(before);
    },
    settleGesture() {
      const now = present();
      if (now) history.settle(now);
    },
    bailGesture() {
      const began = history.bail();
      if (began && began.scene !== session.getState().scene) void become(began)?.done;
    },
    async run() {
      const now = present();
      if (now) await become(now)?.done;
    },
    cancel() {
      runs.cancel();
      cures.cancel();
    },
    seekToFinding(index) {
      const finding = session.getState().result?.findings[index];
      if (!finding) return;
      play.pause();
      play.seek(finding.time);
      session.setState({ chosenFinding: index, chosenJoint: jointOf(finding.risk, finding.subject) });
    },
    goToPlace(chainage) {
      const { result, trial } = session.getState();
      if (!result || !trial) return;
      play.pause();
      play.seek(timeAtPlace(result, trial, chainage, playback.getState().time));
    },
    chooseJoint: (chosenJoint) => session.setState({ chosenJoint }),
    nextEvent: () => goToEvent(timeAfter),
    previousEvent: () => goToEvent(timeBefore),
    setCamera: (camera) => session.setState({ camera }),
    openLens(view) {
      const { result, chosenJoint, chosenFinding } = session.getState();
      if (!result || result.run.vehicles < 2) return;
      if (chosenJoint === null) {
        const worst = result.findings.findIndex((finding) => jointOf(finding.risk, finding.subject) !== null);
        if (chosenFinding === null && worst >= 0) actions.seekToFinding(worst);
        else session.setState({ chosenJoint: 0 });
      }
      session.setState(({ lens }) => ({ lens: { open: true, view: view ?? lens.view } }));
    },
    closeLens: () => session.setState(({ lens }) => ({ lens: { ...lens, open: false } })),
    setLensView: (view) => session.setState(({ lens }) => ({ lens: { ...lens, view } })),
    setAxis: (axis) => session.setState({ axis }),
    setLengthUnit: (lengthUnit) => session.setState({ lengthUnit }),
    setGradeForm: (gradeForm) => session.setState({ gradeForm }),
    setChapter: (chapter) => session.setState({ chapter }),
    setPalette: (palette) => session.setState({ palette }),
    async tryCure(finding, cure) {
      const before = session.getState();
      const found = before.result?.findings[finding];
      if (!before.compiled || !before.trial || !found) return;
      const result = await cures.first(finding, cure);
      // Something newer may be on show by now.
      if (!result || session.getState().result !== before.result) return;
      const cured = applyCure(before.compiled.scene, before.trial.id, found.cures[cure]);
      if (!cured) return;
      const { trial } = prepare(cured, before.trial.id);
      if (session.getState().chosenFinding !== finding) actions.seekToFinding(finding);
      session.setState({ ghost: { finding, cure, trial, result } });
    },
    keepCure() {
      const { ghost, compiled, trial, result } = session.getState();
      const before = present();
      if (!ghost || !compiled || !trial || !result || !before) return;
      const finding = result.findings[ghost.finding];
      const scene = applyCure(compiled.scene, trial.id, finding.cures[ghost.cure]);
      if (!scene) return;
      history.record(cureWords(session.getState(), finding, ghost.cure), before);
      session.setState({ scene, trialId: ghost.trial.id });
      runs.show(prepare(scene, ghost.trial.id), ghost.result);
    },
    dropGhost: () => session.setState({ ghost: null }),
    async undo() {
      const now = present();
      const before = now && history.undo(now);
      if (before) await become(before)?.done;
    },
    async redo() {
      const now = present();
      const after = now && history.redo(now);
      if (after) await become(after)?.done;
    },
    dismissProblem: () => session.setState({ problem: null }),
    report: (problem) => session.setState({ problem }),
    dispose() {
      actions.cancel();
      host.dispose();
    },
  };

  return { session, playback, history: history.store, actions };
}

/** Joint a finding is about, or null when it is about a vehicle. */
const jointOf = (risk: RiskId, subject: number): number | null => (isOfJoint(risk) ? subject : null);
