import type { PlanElement, Track } from '../../../core/track/types.ts';
import { placeWords } from '../../../state/index.ts';
import type { Scene } from '../../../state/types.ts';
import { radiusWords } from '../../band/words.ts';
import { useDesk } from '../../context.tsx';
import { SheetRow } from '../../controls/SheetRow.tsx';
import { lengthShown, type Show, useShow } from '../../show.ts';

interface AlignmentRowsProps {
  readonly file: Scene['tracks'][number];
  readonly track: Track;
}

const kindWords: Readonly<Record<PlanElement['kind'], string>> = {
  straight: 'Straight',
  arc: 'Arc',
  helix: 'Helix',
  transition: 'Easement',
};

function bendWords({ kind, startCurvature, endCurvature, length }: PlanElement, show: Show): string {
  if (kind === 'straight') return '';
  if (kind === 'transition') return `${radiusWords(startCurvature, show)} to ${radiusWords(endCurvature, show)}`;
  const turned = Math.abs(startCurvature * length);
  const degrees = Math.round((turned * 180) / Math.PI);
  const much = kind === 'helix' ? `${Number((turned / (2 * Math.PI)).toFixed(2))} turns` : `${degrees}°`;
  return `${radiusWords(startCurvature, show)}, ${much}`;
}

/** Every element of the alignment in order: what it is, where it starts, how it bends, how long it is. */
export function AlignmentRows({ file, track }: AlignmentRowsProps) {
  const { actions } = useDesk();
  const show = useShow();
  return (
    <>
      <h3 id="alignment-rows">Alignment</h3>
      <ul className="rows" aria-labelledby="alignment-rows">
        {track.spec.elements.map((element, index) => {
          const start = track.plan.startChainage[index];
          const length = lengthShown(element.length, show);
          const name = file.alignment[index]?.id ?? kindWords[element.kind].toLowerCase();
          return (
            <SheetRow
              key={start}
              name={
                <>
                  {kindWords[element.kind]}
                  {name !== kindWords[element.kind].toLowerCase() && <small> {name}</small>}
                </>
              }
              figure={length.shown.join('\u2009')}
              note={[placeWords(start, show), bendWords(element, show)].filter(Boolean).join(' · ')}
              other={length.other}
              onGo={() => actions.goToPlace(start)}
            />
          );
        })}
      </ul>
    </>
  );
}
