import { createContext, type ReactNode, useContext } from 'react';
import { useStore } from 'zustand';
import type { Building } from '../state/build/index.ts';
import type { Command, CommandContext } from '../state/commands/index.ts';
import type { KeepPort } from '../state/index.ts';
import type { Pages } from '../state/page/index.ts';
import type { Pictures } from '../state/picture/index.ts';
import type { Route, RouteState } from '../state/route/index.ts';
import type { Studies } from '../state/study/index.ts';
import type { Surveys } from '../state/survey/index.ts';
import type { HistoryState, SessionState } from '../state/types.ts';

/** A scene that comes with the program. */
export interface BundledScene {
  readonly id: string;
  /** Heading it is listed under; absent: the one of the examples. */
  readonly group?: string;
  readonly scene: NonNullable<SessionState['scene']>;
}

/** A newer version of the program that waits until the person agrees. */
export interface UpdatePort {
  readonly waits: () => boolean;
  /** Calls `changed` when one has come; gives what ends it. */
  readonly subscribe: (changed: () => void) => () => void;
  readonly takeOver: () => void;
}

/** All the screen works with. */
export interface Desk extends CommandContext {
  /** The scenes that come with the program, in the order they are listed. */
  readonly bundled: readonly BundledScene[];
  /** Variants and sweeps of the railway. */
  readonly studies: Studies;
  /** What of the plan is in hand, and the margins while it changes. */
  readonly route: Route;
  /** What is wanted of the things to build. */
  readonly building: Building;
  /** Pictures of what the stage shows. */
  readonly pictures: Pictures;
  /** The page to pass on. */
  readonly pages: Pages;
  /** Readings along the tracks, and what follows from them. */
  readonly surveys: Surveys;
  /** What was kept on this machine. */
  readonly kept: KeepPort;
  /** Whether a newer version of the program waits, and the way to it. */
  readonly update: UpdatePort;
}

const DeskContext = createContext<Desk | null>(null);

export function DeskProvider({ desk, children }: { readonly desk: Desk; readonly children: ReactNode }) {
  return <DeskContext value={desk}>{children}</DeskContext>;
}

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error('The screen is outside its DeskProvider');
  return desk;
}

/** Selects from the session; the selector must give back something stable. */
export function useSession<T>(select: (state: SessionState) => T): T {
  return useStore(useDesk().session, select);
}

export function useRoute<T>(select: (state: RouteState) => T): T {
  return useStore(useDesk().route.route, select);
}

export function useHistory<T>(select: (state: HistoryState) => T): T {
  return useStore(useDesk().history, select);
}

/** Runs a command if it can run now. */
export function runCommand(desk: Desk, command: Command): void {
  if (command.canRun(desk)) void command.run(desk);
}
