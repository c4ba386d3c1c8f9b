import { useMemo } from 'react';
import { riskById } from '../../../core/risks/index.ts';
import type { RiskSeries } from '../../../core/risks/types.ts';
import { placeWords, titleOf } from '../../../state/index.ts';
import { trackChainage } from '../../band/frame/motion.ts';
import { marginFigure, marginUnit, withUnit } from '../../band/words.ts';
import { useDesk, useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';

/** Frame of the least margin of one joint, or null where the risk says nothing of it. */
function leastFrame({ margins, subjects }: RiskSeries, joint: number): number | null {
  let least: number | null = null;
  for (let frame = 0; frame * subjects < margins.length; frame++) {
    const margin = margins[frame * subjects + joint];
    if (Number.isNaN(margin)) continue;
    if (least === null || margin < margins[least * subjects + joint]) least = frame;
  }
  return least;
}

/** The least margin of this joint for every risk that joints run, each a way to its place. */
export function JointMargins({ joint }: { readonly joint: number }) {
  const { actions } = useDesk();
  const show = useShow();
  const result = useSession((state) => state.result);
  const trial = useSession((state) => state.trial);
  const rows = useMemo(() => {
    if (!result || !trial) return [];
    return result.risks
      .filter((series) => riskById(series.risk).subject === 'joint')
      .flatMap((series) => {
        const frame = leastFrame(series, joint);
        if (frame === null) return [];
        const sample = frame * series.subjects + joint;
        return [
          {
            risk: series.risk,
            time: result.run.time[frame],
            margin: series.margins[sample],
            chainage: trackChainage(trial.path, series.chainages[sample]),
          },
        ];
      });
  }, [result, trial, joint]);
  if (rows.length === 0) return null;
  return (
    <>
      <h3 id="joint-margins">Least margins here</h3>
      <ul className="rows" aria-labelledby="joint-margins">
        {rows.map(({ risk, time, margin, chainage }) => {
          const { unit } = riskById(risk);
          return (
            <li key={risk}>
              <button
                type="button"
                className={margin < 0 ? 'sheet-row off' : 'sheet-row'}
                onClick={() => {
                  actions.pause();
                  actions.seek(time);
                }}
              >
                <span>{titleOf(risk)}</span>
                <span className="figure">{withUnit(marginFigure(margin, unit, show), marginUnit(unit, show))}</span>
                <small />
                <small>{`at ${placeWords(chainage, show)}`}</small>
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
