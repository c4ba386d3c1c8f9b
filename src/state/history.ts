import { createStore, type StoreApi } from 'zustand/vanilla';
import type { HistoryState, HistoryStep } from './types.ts';

/** Steps kept: scenes share what did not change, so this costs little. */
const longestPast = 200;

/** The scene and trial at one moment of the document. */
export type Present = Omit<HistoryStep, 'label'>;

export interface History {
  readonly store: StoreApi<HistoryState>;
  /** Records that `before` was left by doing `label`. What had been undone is then gone. */
  record(label: string, before: Present): void;
  /** Goes one step back from `present`; null when there is none. */
  undo(present: Present): Present | null;
  /** Goes one step forward from `present`; null when there is none. */
  redo(present: Present): Present | null;
  /** Opens a gesture: everything until `settle` is one step, everything until `bail` never was. */
  mark(before: Present): void;
  /** True while a gesture is open; it then takes the words of its latest change. */
  marked(label: string): boolean;
  /** True while a gesture is open. */
  gesturing(): boolean;
  /** Where the open gesture began; null when none is open. */
  began(): Present | null;
  /** Closes the gesture as one step, or as none when `present` is where it began; whether it was a step. */
  settle(present: Present): boolean;
  /** Closes the gesture and gives back where it began; null when none is open. */
  bail(): Present | null;
  clear(): void;
}

/** Makes an empty history of scenes. */
export function createHistory(): History {
  const store = createStore<HistoryState>(() => ({ past: [], future: [] }));
  let open: HistoryStep | null = null;

  const record = (label: string, before: Present) =>
    store.setState(({ past }) => ({ past: [...past, { label, ...before }].slice(-longestPast), future: [] }));

  return {
    store,
    record,
    undo(present) {
      const { past, future } = store.getState();
      const step = past.at(-1);
      if (!step) return null;
      store.setState({ past: past.slice(0, -1), future: [{ label: step.label, ...present }, ...future] });
      return { scene: step.scene, trialId: step.trialId };
    },
    redo(present) {
      const { past, future } = store.getState();
      const step = future[0];
      if (!step) return null;
      store.setState({ past: [...past, { label: step.label, ...present }], future: future.slice(1) });
      return { scene: step.scene, trialId: step.trialId };
    },
    mark(before) {
      open ??= { label: '', ...before };
    },
    marked(label) {
      if (open) open = { ...open, label };
      return open !== null;
    },
    gesturing: () => open !== null,
    began: () => open && { scene: open.scene, trialId: open.trialId },
    settle(present) {
      const changed = open !== null && open.scene !== present.scene;
      if (open && changed) record(open.label, { scene: open.scene, trialId: open.trialId });
      open = null;
      return changed;
    },
    bail() {
      const began = open;
      open = null;
      return began && { scene: began.scene, trialId: began.trialId };
    },
    clear() {
      open = null;
      store.setState({ past: [], future: [] });
    },
  };
}
