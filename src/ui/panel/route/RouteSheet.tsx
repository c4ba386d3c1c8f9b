import { useMemo } from 'react';
import { draftTrack } from '../../../state/routeEdits/index.ts';
import { useSession } from '../../context.tsx';
import { distanceShown, gradeShown, lengthShown, radiusShown, type Shown, useShow } from '../../show.ts';
import { LinesideRows } from '../lineside/LinesideRows.tsx';
import { StructureRows } from '../lineside/StructureRows.tsx';
import { ReachFact } from '../room/ReachFact.tsx';
import { RoomPart } from '../room/RoomPart.tsx';
import { AdviceRows } from './AdviceRows.tsx';
import { AlignmentRows } from './AlignmentRows.tsx';
import { ProfileRows } from './ProfileRows.tsx';
import { routeFacts } from './routeFacts.ts';
import { StartRow } from './StartRow.tsx';
import { SupportRows } from './SupportRows.tsx';
import { TrackRows } from './TrackRows.tsx';
import { useRouteChoice } from './useRouteChoice.ts';
import { VerdictLine } from './VerdictLine.tsx';
import '../editSheet.css';

/** The route as it is being made: every number of its alignment, heights and supports, to type or to drag. */
export function RouteSheet() {
  const show = useShow();
  const scene = useSession((state) => state.scene);
  const choice = useRouteChoice();
  const tracks = scene?.tracks ?? [];
  const track = tracks.find(({ id }) => id === choice.track) ?? tracks[0];
  const drawn = useMemo(() => (scene && track ? draftTrack(scene, track.id) : null), [scene, track]);
  const facts = useMemo(() => drawn && routeFacts(drawn), [drawn]);
  if (!scene || !track) return null;
  return (
    <section className="edit-sheet" aria-label="Route">
      <h2>{track.name}</h2>
      {facts && (
        <dl className="facts">
          <FactPair name="Length" of={distanceShown(facts.length, show)} />
          <FactPair name={facts.rise < 0 ? 'Falls' : 'Rises'} of={lengthShown(Math.abs(facts.rise), show)} />
          <FactPair name="Steepest, planned" of={gradeShown(Math.abs(facts.steepest), show)} />
          {facts.leastRadius !== null && <FactPair name="Tightest curve" of={radiusShown(facts.leastRadius, show)} />}
          {drawn && <ReachFact scene={scene} track={drawn} />}
        </dl>
      )}
      <VerdictLine />
      <AdviceRows scene={scene} />
      <AlignmentRows track={track} chosen={choice.element} onChoose={choice.chooseElement} />
      <ProfileRows track={track} chosen={choice.point} onChoose={choice.choosePoint} />
      <SupportRows track={track} drawn={drawn} />
      <LinesideRows scene={scene} track={track} drawn={drawn} />
      <StartRow track={track} />
      <h3>Tracks</h3>
      <TrackRows tracks={tracks} track={track} onChoose={choice.chooseTrack} />
      <StructureRows scene={scene} track={track} drawn={drawn} />
      <RoomPart scene={scene} />
    </section>
  );
}

function FactPair({ name, of }: { readonly name: string; readonly of: Shown }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {of.shown.join('\u2009')} <small>{of.other}</small>
      </dd>
    </div>
  );
}
