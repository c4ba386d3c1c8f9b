import { placeWords } from '../../../state/index.ts';
import { type SceneTrack, type StartChange, setStart } from '../../../state/routeEdits/index.ts';
import { useDesk } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { useShow } from '../../show.ts';

/** The format's bound of a place in the room, mm. */
const farthestMm = 200_000;

/** Where chainage 0 lies in the room and which way it runs, or the turnout it begins at. */
export function StartRow({ track }: { readonly track: SceneTrack }) {
  const { actions } = useDesk();
  const show = useShow();
  const { start } = track;
  if ('branchOf' in start) {
    return (
      <p className="quiet">
        Begins at a turnout {placeWords(start.atMm / 1000, show)} along “{start.branchOf}”.
      </p>
    );
  }
  const put = (words: string, change: StartChange) =>
    actions.attempt(`${words} of ${track.name}`, (scene) => setStart(scene, track.id, change));
  const place = { measures: 'length', step: 10, least: -farthestMm, most: farthestMm } as const;
  return (
    <>
      <h3 id="start-row">Begins at</h3>
      <div className="edit-row">
        <div className="fields three">
          <EditField label="East" {...place} value={start.xMm} onChange={(xMm) => put('place', { xMm })} />
          <EditField label="North" {...place} value={start.yMm} onChange={(yMm) => put('place', { yMm })} />
          <EditField
            label="Heading"
            measures="angle"
            step={1}
            least={-360}
            most={360}
            value={start.headingDeg}
            onChange={(headingDeg) => put('heading', { headingDeg })}
          />
        </div>
      </div>
    </>
  );
}
