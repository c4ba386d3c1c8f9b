import type { StoreApi } from 'zustand/vanilla';
import { isNoScene, parseScene, type Scene, sceneInPage, serialiseScene } from '../scene/index.ts';
import { applyCure } from '../sim/index.ts';
import { wordsOf } from './aborting.ts';
import type { CureRounds } from './cureRounds.ts';
import type { History, Present } from './history.ts';
import { runsTheSame, withPartsOf } from './sameRailway.ts';
import type { DocumentActions, MomentActions } from './session.ts';
import { findTrial, givenWorking, trialWorked, type Working, withSetting, withTrialWorked } from './trialEdits.ts';
import { type Prepared, prepare, type TrialRuns } from './trialRuns.ts';
import type { Opened, PlaybackState, SessionState } from './types.ts';
import { cureWords, settingWords, trialWords } from './words.ts';

/** Least speed setting that can be asked for. */
const leastSetting = 0.01;

/** Why a change would make no scene, as one sentence. */
const refusalWords = ({ found, allowed }: { readonly found: string; readonly allowed: string }): string =>
  `That would give ${found}, where ${allowed} can stand.`;

interface DocumentParts {
  readonly session: StoreApi<SessionState>;
  readonly playback: StoreApi<PlaybackState>;
  readonly history: History;
  readonly cures: CureRounds;
  readonly runs: TrialRuns;
  readonly seekToFinding: MomentActions['seekToFinding'];
}

/** What can be done to the scene and its trials, on the history, the runs and the cures of a session. */
export function createDocumentActions(parts: DocumentParts): DocumentActions {
  const { session, playback, history, cures, runs, seekToFinding } = parts;

  const present = (): Present | null => {
    const { scene, trialId } = session.getState();
    return scene && trialId ? { scene, trialId } : null;
  };
  const presentTrial = () => {
    const now = present();
    const trial = now && findTrial(now.scene, now.trialId);
    return now && trial ? { scene: now.scene, trial } : null;
  };

  const complain = (title: string, error: unknown) => session.setState({ problem: { title, lines: [wordsOf(error)] } });

  /** Makes `next` the present where trains run in it just as in what is solved and on show; false where they do not. */
  const runsAlready = ({ scene, trialId }: Present): boolean => {
    const { compiled, result, progress } = session.getState();
    if (compiled === null || result?.trialId !== trialId || progress !== null) return false;
    if (!runsTheSame(compiled.scene, scene)) return false;
    session.setState({ scene, trialId, compiled: { ...compiled, scene }, problem: null });
    return true;
  };

  /** Makes `next` the present and solves it. Null, and nothing changed, when it cannot be compiled. */
  const become = (next: Present, ready?: Prepared): { readonly done: Promise<void> } | null => {
    if (runsAlready(next)) return { done: Promise.resolve() };
    try {
      const prepared = ready ?? prepare(next.scene, next.trialId);
      cures.cancel();
      session.setState({ ...next, ghost: null, problem: null });
      if (history.gesturing()) {
        // The hand is still moving: the trial is solved when it lets go.
        runs.cancel();
        return { done: Promise.resolve() };
      }
      return { done: runs.solve(prepared) };
    } catch (error) {
      complain('This change cannot be made', error);
      return null;
    }
  };

  /** An edit: one undo step, or part of the open gesture. */
  const edit = async (label: string, next: Present, ready?: Prepared): Promise<void> => {
    const before = present();
    const became = before && become(next, ready);
    if (!before || !became) return;
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
        notKept: null,
        holding: false,
        file: null,
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

  const actions: DocumentActions = {
    openScene(scene, opened = { from: 'program', name: scene.name }, trialId = scene.opensWith ?? scene.trials[0].id) {
      return open(scene, opened, findTrial(scene, trialId) ? trialId : scene.trials[0].id);
    },
    async openFileText(name, text) {
      if (isNoScene(sceneInPage(text) ?? text)) {
        const lines = ['A railway file is one that Gradewright wrote; nothing in this one belongs to a railway.'];
        session.setState({ problem: { title: `“${name}” is no railway file`, lines } });
        return;
      }
      const parsed = parseScene(text);
      if (parsed.ok) await actions.openScene(parsed.scene, { from: 'file', name });
      else
        session.setState({ problem: { title: `“${name}” could not be opened`, lines: [], places: parsed.problems } });
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
      const wanted: Working = { ...givenWorking(scene, like), ...working };
      const ready = trialWorked(scene, like, wanted);
      if (ready) return actions.chooseTrial(ready.id);
      const name = trialWords(scene, like, wanted);
      await edit(`“${name}”`, withTrialWorked(scene, like, wanted, name));
    },
    async setSetting(setting) {
      const now = presentTrial();
      if (!now) return;
      const { scene, trial } = now;
      const held = Math.min(Math.max(setting, leastSetting), 1);
      await edit(settingWords(held), { scene: withSetting(scene, trial.id, held), trialId: trial.id });
    },
    async change(label, make) {
      const now = present();
      if (!now) return false;
      const title = 'This change cannot be made';
      try {
        const checked = parseScene(make(now.scene));
        if (!checked.ok) {
          session.setState({ problem: { title, lines: [], places: checked.problems } });
          return false;
        }
        const scene = withPartsOf(now.scene, checked.scene);
        const trialId = findTrial(scene, now.trialId) ? now.trialId : scene.trials[0].id;
        await edit(label, { scene, trialId });
        return session.getState().scene === scene;
      } catch (error) {
        if (!(error instanceof RangeError)) throw error;
        complain(title, error);
        return false;
      }
    },
    attempt(label, make) {
      const now = present();
      if (!now) return 'No railway is open.';
      try {
        const checked = parseScene(make(now.scene));
        if (!checked.ok) return refusalWords(checked.problems[0]);
        const scene = withPartsOf(now.scene, checked.scene);
        const trialId = findTrial(scene, now.trialId) ? now.trialId : scene.trials[0].id;
        const prepared = prepare(scene, trialId);
        if (serialiseScene(scene) !== serialiseScene(now.scene)) void edit(label, { scene, trialId }, prepared);
        return null;
      } catch (error) {
        return wordsOf(error);
      }
    },
    beginGesture() {
      const before = present();
      if (!before) return;
      history.mark(before);
      session.setState({ holding: true });
    },
    settleGesture() {
      const now = present();
      const began = history.began();
      // A hand that comes back to where it took hold has changed nothing.
      if (now && began && now.scene !== began.scene && serialiseScene(now.scene) === serialiseScene(began.scene)) {
        actions.bailGesture();
        return;
      }
      if (session.getState().holding) session.setState({ holding: false });
      if (now && history.settle(now)) void become(now)?.done;
    },
    bailGesture() {
      const began = history.bail();
      if (session.getState().holding) session.setState({ holding: false });
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
      if (session.getState().chosenFinding !== finding) seekToFinding(finding);
      session.setState({ ghost: { finding, cure, trial, result } });
    },
    keepCure() {
      const state = session.getState();
      const { ghost, compiled, trial, result } = state;
      const before = present();
      if (!ghost || !compiled || !trial || !result || !before) return;
      const finding = result.findings[ghost.finding];
      const scene = applyCure(compiled.scene, trial.id, finding.cures[ghost.cure]);
      if (!scene) return;
      history.record(cureWords(state, finding, ghost.cure), before);
      // The joint the lens looks at may not be in question any more.
      session.setState(({ lens }) => ({ scene, trialId: ghost.trial.id, lens: { ...lens, open: false } }));
      runs.show(prepare(scene, ghost.trial.id), ghost.result);
    },
    dropGhost: () => session.setState({ ghost: null }),
    async undo() {
      actions.settleGesture();
      const now = present();
      const before = now && history.undo(now);
      if (before) await become(before)?.done;
    },
    async redo() {
      const now = present();
      const after = now && history.redo(now);
      if (after) await become(after)?.done;
    },
  };
  return actions;
}
