import { type Leftover, testColumn } from '../residuals.ts';
import { chainageOf, heightReadings } from '../rows.ts';
import { type Candidate, type Family, readingsColumn, type SlipContext } from './candidate.ts';

/** The amount may miss the deck's thickness by this many of its standard deviations. */
const missesBy = 3;

/** Decks are as thick as they are sold within this, m: 6 mm ply of 5.5 mm is common (common practice, no source). */
const boardTolerance = 0.0006;

/** A run of heights that all miss by the thickness of the deck: it was forgotten, or counted twice, from one place to another. */
export function board(context: SlipContext, left: Leftover): Family {
  const { input, readings, rows } = context;
  const heights = heightReadings(readings)
    .map(([index, reading]) => ({ index, at: chainageOf(reading.at, input.supports) }))
    .sort((p, q) => p.at - q.at || p.index - q.index)
    .map(({ index }) => index);
  const count = heights.length;
  const alternatives = Math.max(1, (count * (count - 1)) / 2);
  if (input.board <= 0 || count < 3) return { candidates: [], alternatives };
  let best: Candidate | null = null;
  let most = 0;
  for (const run of bestRuns(heights, context, left)) {
    const column = readingsColumn(new Set(run));
    const test = testColumn(rows, left, column(rows));
    if (test === null || test.statistic <= most) continue;
    const miss = Math.abs(Math.abs(test.amount) - input.board);
    if (miss > missesBy * test.deviation + boardTolerance) continue;
    most = test.statistic;
    best = { kind: 'board', readings: run, support: -1, at: 'readings', column };
  }
  return { candidates: best === null ? [] : [best], alternatives };
}

/** For every first reading of a run the run that explains most, by running sums: one step a run. */
function bestRuns(heights: readonly number[], { rows }: SlipContext, { residual, basis }: Leftover): number[][] {
  const runs: number[][] = [];
  for (let from = 0; from < heights.length; from++) {
    const shares = new Float64Array(basis.length);
    let along = 0;
    let square = 0;
    let most = 0;
    let until = -1;
    for (let to = from; to < heights.length; to++) {
      const k = heights[to];
      const weight = 1 / rows[k].deviation;
      along += weight * residual[k];
      square += weight * weight;
      let taken = 0;
      for (let q = 0; q < shares.length; q++) {
        shares[q] += weight * basis[q][k];
        taken += shares[q] * shares[q];
      }
      if (to === from || !(square - taken > 1e-9 * square)) continue;
      const statistic = (along * along) / (square - taken);
      if (statistic > most) {
        most = statistic;
        until = to;
      }
    }
    if (until > from) runs.push(heights.slice(from, until + 1));
  }
  return runs;
}
