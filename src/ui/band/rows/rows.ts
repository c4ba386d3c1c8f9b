import { createContext } from 'react';

/** What the pointer layer asks of the row under it. */
export interface RowHooks {
  readonly hover: ((x: number, y: number) => string) | undefined;
  readonly press: ((x: number, y: number) => number | undefined) | undefined;
}

/** The rows on view by id; filled by the rows themselves. */
export const RowsContext = createContext<Map<string, RowHooks>>(new Map());
