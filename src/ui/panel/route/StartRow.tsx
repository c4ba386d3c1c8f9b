import {
  moveTurnout,
  type SceneBranch,
  type SceneTrack,
  type StartChange,
  setStart,
  type TurnoutChange,
  trackLengthMm,
} from '../../../state/routeEdits/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { EditField } from '../../controls/EditField.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { mmShown } from '../../measures.ts';
import { useShow } from '../../show.ts';

/** The format's bound of a place in the room, mm. */
const farthestMm = 200_000;

/** Where chainage 0 lies in the room and which way it runs, or the turnout it begins at. */
export function StartRow({ track }: { readonly track: SceneTrack }) {
  const { actions } = useDesk();
  const { start } = track;
  if ('branchOf' in start) {
    return <TurnoutRow track={track} start={start} />;
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

interface TurnoutRowProps {
  readonly track: SceneTrack;
  readonly start: SceneBranch;
}

/** The turnout that a branch begins at: where on its main track, to which side and which way. */
function TurnoutRow({ track, start }: TurnoutRowProps) {
  const { actions } = useDesk();
  const main = useSession(({ scene }) => scene?.tracks.find(({ id }) => id === start.branchOf));
  const put = (words: string, change: TurnoutChange) =>
    actions.attempt(`${words} of ${track.name}`, (scene) => moveTurnout(scene, track.id, change));
  const show = useShow();
  const { turnout, towards, atMm } = start;
  const crossing = turnout.crossing ? `a crossing of 1 in ${turnout.crossing.oneIn}` : 'a curved crossing';
  return (
    <>
      <h3 id="start-row">Begins at a turnout of {main?.name ?? start.branchOf}</h3>
      <div className="edit-row">
        <div className="fields three">
          <EditField
            label="Along it"
            measures="length"
            step={10}
            least={0}
            most={main ? trackLengthMm(main) : atMm}
            value={atMm}
            onChange={(value) => put('place of the turnout', { atMm: value })}
          />
          <div className="hand">
            <Segmented
              label="The turnout leads to the"
              value={turnout.hand}
              onChange={(hand) => void put('hand of the turnout', { hand })}
              choices={[
                { value: 'left', label: 'left' },
                { value: 'right', label: 'right' },
              ]}
            />
          </div>
          <div className="hand">
            <Segmented
              label="The turnout leads towards its"
              value={towards}
              onChange={(next) => void put('way of the turnout', { towards: next })}
              choices={[
                { value: 'end', label: 'to its end' },
                { value: 'start', label: 'to its start' },
              ]}
            />
          </div>
        </div>
      </div>
      <p className="quiet">
        Radius {mmShown(turnout.radiusMm, show).shown.join('\u2009')}, {crossing}.
      </p>
    </>
  );
}
