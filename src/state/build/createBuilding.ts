import { createStore, type StoreApi } from 'zustand/vanilla';
import type { BuildPlan } from '../../sim/build/index.ts';
import { buildPlan } from '../../sim/build/index.ts';
import type { CompiledScene } from '../types.ts';
import type { BuildingState, BuildSheet } from './types.ts';

/** What is wanted of the things to build, and the way to change it. */
export interface Building {
  readonly building: StoreApi<BuildingState>;
  readonly actions: {
    set(change: Partial<BuildingState>): void;
    setSheet(change: Partial<BuildSheet>): void;
  };
}

/** A sheet as timber merchants of metric countries sell it, a saw's cut, the longest curved piece that a person turns on a bench, a spacing for 9 mm ply: assumptions. */
const opening: BuildingState = {
  sheet: { length: 2.44, width: 1.22, kerf: 0.003, longest: 0.6 },
  every: 0.3,
  thread: 'M6',
  trackId: null,
};

/** Makes what the Build chapter remembers while the program is open. */
export function createBuilding(): Building {
  const building = createStore<BuildingState>(() => opening);
  return {
    building,
    actions: {
      set: (change) => building.setState(change),
      setSheet: (change) => building.setState(({ sheet }) => ({ sheet: { ...sheet, ...change } })),
    },
  };
}

/** What a railway is built of by these wishes; or, in words, why there is no such plan. Takes tens of milliseconds on a railway of 20 m. */
export function planToBuild(
  compiled: CompiledScene,
  { sheet, every }: Pick<BuildingState, 'sheet' | 'every'>,
): BuildPlan | string {
  const { length, width, ...saw } = sheet;
  try {
    return buildPlan(compiled, {
      sheet: { ...saw, length: Math.max(length, width), width: Math.min(length, width) },
      every,
    });
  } catch (error) {
    // What cannot be cut is told in words; anything else is a fault of the program.
    if (!(error instanceof RangeError)) throw error;
    return error.message;
  }
}
