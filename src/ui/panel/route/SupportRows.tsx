import { plannedHeight } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { formatLength } from '../../../core/units/index.ts';
import { placeWords } from '../../../state/index.ts';
import { useDesk } from '../../context.tsx';
import { SheetRow } from '../../controls/SheetRow.tsx';
import { lengthShown, useShow } from '../../show.ts';

/** Departures below this are none: nobody sets a support closer, m. */
const asPlanned = 0.00005;

/** Every support: its number and place, its planned height, and how far it stands off it. */
export function SupportRows({ track }: { readonly track: Track }) {
  const { actions } = useDesk();
  const show = useShow();
  const supports = track.spec.profile.strip?.supports ?? [];
  if (supports.length === 0) return null;
  return (
    <>
      <h3 id="support-rows">Supports</h3>
      <ul className="rows" aria-labelledby="support-rows">
        {supports.map(({ chainage, departure }, index) => {
          const height = lengthShown(plannedHeight(track, chainage), show);
          const off = Math.abs(departure) >= asPlanned;
          const unit = show.lengthUnit === 'mm' ? {} : { unit: 'in' as const, digits: 3 };
          return (
            <SheetRow
              key={chainage}
              name={`Support ${index + 1}`}
              figure={height.shown.join('\u2009')}
              note={placeWords(chainage, show)}
              other={off ? `${formatLength(departure, { signed: true, ...unit })} off` : height.other}
              off={off}
              onGo={() => actions.goToPlace(chainage)}
            />
          );
        })}
      </ul>
    </>
  );
}
