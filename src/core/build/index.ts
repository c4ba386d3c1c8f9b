export { type Cut, type CutPieces, cutPieces, type Ordinate, type SheetOfWood } from './cutPieces.ts';
export { type FlatRing, flatRing } from './flatRing.ts';
export { nestedPitch, type RingSector, ringSector } from './ringSector.ts';
export { type LaidPiece, layOnSheets, type SheetLayout } from './sheetLayout.ts';
export { railsOver } from './standing.ts';
export { type ScheduleInput, supportSchedule } from './supportSchedule.ts';
export { rodPlay, type TurnByTurn, turnsOfHelices } from './turnByTurn.ts';
export type { Board, Layers, Standing, SupportRow } from './types.ts';
