import { useMemo, useState } from 'react';
import { useSession } from '../../context.tsx';
import { Fact } from '../../controls/Fact.tsx';
import { distanceShown, gradeShown, lengthShown, radiusShown, useShow } from '../../show.ts';
import { AlignmentRows } from './AlignmentRows.tsx';
import { ProfileRows } from './ProfileRows.tsx';
import { routeFacts } from './routeFacts.ts';
import { SupportRows } from './SupportRows.tsx';

/** The route as the scene gives it, to read: its alignment, its profile and its supports, element by element. */
export function RouteSheet() {
  const show = useShow();
  const compiled = useSession((state) => state.compiled);
  const trialTrack = useSession((state) => state.trial?.trackId ?? '');
  const [chosen, setChosen] = useState<string | null>(null);
  const tracks = compiled?.scene.tracks ?? [];
  const file =
    tracks.find((track) => track.id === chosen) ?? tracks.find((track) => track.id === trialTrack) ?? tracks[0];
  const track = file && compiled?.tracks.get(file.id);
  const facts = useMemo(() => track && routeFacts(track), [track]);
  if (!file || !track || !facts) return null;
  const length = distanceShown(facts.length, show);
  const rise = lengthShown(Math.abs(facts.rise), show);
  const radius = facts.leastRadius === null ? null : radiusShown(facts.leastRadius, show);
  const grade = gradeShown(Math.abs(facts.steepest), show);
  return (
    <section aria-label="Route">
      <h2>{file.name}</h2>
      <p className="quiet">as planned and built, to read</p>
      {tracks.length > 1 && (
        <ul className="trial-list track-list" aria-label="Tracks">
          {tracks.map((one) => (
            <li key={one.id}>
              <button type="button" aria-current={one === file ? 'true' : undefined} onClick={() => setChosen(one.id)}>
                {one.name}
              </button>
            </li>
          ))}
        </ul>
      )}
      <Fact name="Length" shown={length.shown} others={length.other} />
      <Fact name={facts.rise < 0 ? 'Falls' : 'Rises'} shown={rise.shown} others={rise.other} />
      <Fact name="Steepest grade planned" shown={grade.shown} others={grade.other} />
      {radius && <Fact name="Tightest curve" shown={radius.shown} others={radius.other} />}
      <AlignmentRows file={file} track={track} />
      <ProfileRows track={track} />
      <SupportRows track={track} />
    </section>
  );
}
