import { lineShape } from './lineShape.ts';
import { rowSystem } from './rows.ts';
import type { Survey } from './types.ts';

/** One reading beside what it would be on the plan: enough to see with a pencil that a support is off. */
export interface HandCheckLine {
  /** Index of the reading. */
  readonly reading: number;
  /** What was read, and what would be read with every support as planned; zero error and sight line as estimated. */
  readonly read: number;
  readonly planned: number;
  /** What this support alone, standing where the account has it, makes of the reading. */
  readonly made: number;
}

/** A reading that a support moves by less than this many of its own deviations shows nothing of it by eye. */
const seenByEye = 1.5;

/** More lines than this are no check by hand. */
const mostLines = 5;

/** The readings that show best where a support stands, in their order; those that slipped are left out. Units as read. */
export function handCheck({ input, explanation }: Survey, support: number): HandCheckLine[] {
  const { rows, others } = rowSystem(input, lineShape(input));
  const slipped = new Set(explanation.slips.flatMap(({ readings }) => readings));
  const lines = rows
    .filter(({ reading }) => reading >= 0 && !slipped.has(reading))
    .map((row) => {
      const given = row.others.reduce((sum, [k, factor]) => sum + factor * amountOf(others[k].id), 0);
      const made = row.heights[support] * explanation.departures[support];
      return {
        reading: row.reading,
        read: row.observed,
        planned: row.planned + given,
        made,
        sight: Math.abs(made) / row.deviation,
      };
    });
  return lines
    .filter(({ sight }) => sight >= seenByEye)
    .sort((a, b) => b.sight - a.sight)
    .slice(0, mostLines)
    .sort((a, b) => a.reading - b.reading)
    .map(({ sight: _sight, ...line }) => line);

  function amountOf(id: string): number {
    return explanation.instruments.find((one) => one.id === id)?.value ?? 0;
  }
}
