import { useState } from 'react';
import { pullReserve } from '../../../core/findings/index.ts';
import { formatNumber, thinSpace } from '../../../core/units/index.ts';
import { type Haul, type HaulCase, type HaulTable, haulTable } from '../../../state/stock/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useSession } from '../../context.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { counted, distanceShown, percentWords, radiusShown, type Show, useShow } from '../../show.ts';

interface LoadPartProps {
  readonly scene: Scene;
  readonly train: Scene['trains'][number];
}

/** How many vehicles the engines of a train take along, by what each rule of thumb counts and as the trial has it. */
export function LoadPart({ scene, train }: LoadPartProps) {
  const onShow = useSession((state) => state.trialId);
  const [found, setFound] = useState<{ readonly scene: Scene; readonly table: HaulTable } | null>(null);
  const own = scene.trials.filter((trial) => trial.train === train.id);
  const trial = own.find(({ id }) => id === onShow) ?? own[0];
  if (trial === undefined) return null;
  const table = found?.scene === scene && found.table.trialId === trial.id ? found.table : null;
  const workOut = (): string | null => {
    try {
      setFound({ scene, table: haulTable(scene, trial.id) });
      return null;
    } catch (error) {
      // What cannot be counted is told in words; anything else is a fault of the program.
      if (!(error instanceof RangeError)) throw error;
      return error.message;
    }
  };
  return (
    <>
      <h3 id="train-load">Load</h3>
      {table === null ? (
        <div className="add-row">
          <span>in “{trial.name}”</span>
          <Refusable acts={[{ words: 'How many can it take?', act: workOut }]} />
        </div>
      ) : (
        <Loads scene={scene} table={table} trialName={trial.name} />
      )}
    </>
  );
}

interface LoadsProps {
  readonly scene: Scene;
  readonly table: HaulTable;
  readonly trialName: string;
}

function Loads({ scene, table, trialName }: LoadsProps) {
  const show = useShow();
  const name = scene.stock.find(({ id }) => id === table.kind)?.name ?? table.kind;
  const last = table.hauls.at(-1);
  return (
    <>
      <p className="quiet load-words">
        So many × {name} in “{trialName}”, before the engines have nothing left:
      </p>
      <table className="load-table" aria-labelledby="train-load">
        <tbody>
          {table.hauls.map((haul) => (
            <tr key={haul.counts} className={haul.counts === 'trial' ? 'all' : undefined}>
              <th scope="row">{countedWords(haul.counts, table, show)}</th>
              <td>{howMany(haul)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {table.surely !== null && (
        <p className="quiet load-words">
          With {percentWords(pullReserve)} in hand, as a verdict wants it: {counted(table.surely, 'whole vehicle')}.
        </p>
      )}
      <p className="quiet load-words">
        {last &&
          last.vehicles !== null &&
          `It decides at ${distanceShown(last.chainage, show).shown.join(thinSpace)}. `}
        The first lines are worked out at a crawl and without flange friction, as rules of thumb are; steady running, no
        starts.
      </p>
    </>
  );
}

function howMany({ vehicles, fits }: Haul): string {
  if (vehicles === null) return 'any number';
  return fits ? formatNumber(vehicles, { digits: 2 }) : `${vehicles}, all that fit`;
}

function countedWords(counts: HaulCase, { radius, curveLow, curveHigh }: HaulTable, show: Show): string {
  const curve = radius === null ? '' : radiusShown(radius, show).shown.join(thinSpace);
  switch (counts) {
    case 'grade':
      return 'the grade alone';
    case 'rolling':
      return 'and rolling';
    case 'curves-low':
      return `and curves at their least, ${percentWords(curveLow, 1)}`;
    case 'curves-high':
      return `and curves at their most, ${percentWords(curveHigh, 2)} on ${curve}`;
    case 'trial':
      return 'all, as the trial has it';
  }
}
