import type { Surveyed } from '../../../state/types.ts';
import type { Comb } from './comb.ts';
import type { Ground } from './ground.ts';

/** Half a 95 % range in standard deviations. */
const HALF_RANGE = 1.96;

/** What a survey says of one support, in pixels of the row. */
export interface SurveyMark {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  /** Ends of one standard deviation and of the 95 % range, the upper first. */
  readonly near: readonly [number, number];
  readonly far: readonly [number, number];
  readonly wrong: boolean;
  /** Where the mending puts it; null where it stays. */
  readonly mended: number | null;
}

/** Marks of a survey over the comb; supports of which the readings tell nothing have none. */
export function surveyMarks({ supports }: Surveyed, ground: Ground, { baseline, perMillimetre }: Comb): SurveyMark[] {
  const yOf = (departure: number): number => baseline - departure * 1000 * perMillimetre;
  return supports.flatMap(({ chainage, departure, deviation, wrong, mended }, index) =>
    departure === null
      ? []
      : ground.xsOf(chainage).map((x, turn): SurveyMark => {
          const range = (reach: number) =>
            [yOf(departure + reach * deviation), yOf(departure - reach * deviation)] as const;
          return {
            key: `${index}.${turn}`,
            x,
            y: yOf(departure),
            near: range(1),
            far: range(HALF_RANGE),
            wrong,
            mended: mended === null ? null : yOf(mended),
          };
        }),
  );
}

/** How far up and down the marks of a survey reach, m, both ≥ 0. */
export function surveyReach(surveyed: Surveyed | null): { readonly up: number; readonly down: number } {
  let up = 0;
  let down = 0;
  for (const { departure, deviation } of surveyed?.supports ?? []) {
    if (departure === null) continue;
    up = Math.max(up, departure + HALF_RANGE * deviation);
    down = Math.max(down, HALF_RANGE * deviation - departure);
  }
  return { up, down };
}
