import type { Vehicle } from '../../../core/stock/types.ts';
import { formatForce, formatNumber } from '../../../core/units/index.ts';
import { SheetRow } from '../../controls/SheetRow.tsx';
import { lengthShown, massShown, type Shown, speedWords, useShow } from '../../show.ts';

interface VehicleRowsProps {
  readonly vehicle: Vehicle;
  readonly count: number;
  /** Number of the first of them in the train, counted from 1 at the end called "first". */
  readonly from: number;
  /** Rings it on the stage and the band; null for a train that is not on the road. */
  readonly onShow: (() => void) | null;
}

/** The measures of one vehicle, or of several alike, in both forms. */
export function VehicleRows({ vehicle, count, from, onShow }: VehicleRowsProps) {
  const show = useShow();
  const { front, rear, drive } = vehicle;
  const length = (metres: number) => lengthShown(metres, show);
  const rows: [name: string, shown: Shown][] = [
    ['Mass', massShown(vehicle.mass, show)],
    ['Body', length(vehicle.bodyLength)],
    [vehicle.bogies ? 'Bogie centres' : 'Wheelbase', length(vehicle.pivotSpacing)],
    ...(vehicle.bogies ? ([['Bogie wheelbase', length(vehicle.rigidWheelbase)]] as [string, Shown][]) : []),
    ['Height', length(vehicle.bodyHeight)],
  ];
  if (front.coupling.headHeight === rear.coupling.headHeight)
    rows.push(['Coupler heads', length(front.coupling.headHeight)]);
  else rows.push(['Front head', length(front.coupling.headHeight)], ['Rear head', length(rear.coupling.headHeight)]);
  if (drive) rows.push(['On driven wheels', massShown(drive.drivenMass, show)]);
  const numbers = count === 1 ? `${from}` : `${from} to ${from + count - 1}`;
  return (
    <>
      <h3>
        {onShow ? (
          <button type="button" title="Ring it on the stage" onClick={onShow}>
            {numbers} {vehicle.name}
          </button>
        ) : (
          `${numbers} ${vehicle.name}`
        )}
      </h3>
      <ul className="rows" aria-label={`${numbers} ${vehicle.name}`}>
        {rows.map(([name, { shown, other }]) => (
          <SheetRow key={name} name={name} figure={shown.join('\u2009')} note="" other={other} />
        ))}
        <SheetRow
          name="Coupling"
          figure={front.coupling.kind.replaceAll('-', ' ')}
          other={front.buffers || rear.buffers ? 'and buffers' : ''}
        />
        {drive && (
          <>
            <SheetRow
              name="Pull at a stand"
              figure={formatForce(drive.stallForce)}
              other={formatForce(drive.stallForce, { unit: 'gf' })}
            />
            <SheetRow name="Grip" figure={formatNumber(drive.adhesion, { digits: 2 })} other="of the weight on them" />
            <SheetRow name="Light, full setting" figure={speedWords(drive.freeSpeed, undefined, show)} />
          </>
        )}
      </ul>
    </>
  );
}
