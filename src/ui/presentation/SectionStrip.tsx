import { useEffect, useMemo, useRef } from 'react';
import { trackPoint } from '../../core/track/index.ts';
import type { Track, TrackPoint } from '../../core/track/types.ts';
import { useDesk, useSession } from '../context.tsx';
import { endsAt } from './endsAt.ts';

/** Drawn in a box of this size; it is stretched to what room there is, lines keep their width. */
const wide = 1000;
const high = 100;
const clear = 12;

/** Points of the line. */
const steps = 240;

/** The section of the line in small, and on it where the train is. */
export function SectionStrip() {
  const { playback } = useDesk();
  const trial = useSession((state) => state.trial);
  const result = useSession((state) => state.result);
  const train = useRef<SVGPathElement>(null);
  const section = useMemo(() => (trial === null ? null : sectionOf(trial.path.track, trial.path.reversed)), [trial]);
  useEffect(() => {
    if (section === null || trial === null || result === null) return;
    const stand = () => {
      const { run } = result;
      const [tail, head] = endsAt(run, playback.getState().time);
      train.current?.setAttribute('d', section.between(tail, head));
    };
    stand();
    return playback.subscribe(stand);
  }, [section, trial, result, playback]);
  if (section === null) return null;
  return (
    <svg className="section-strip" viewBox={`0 0 ${wide} ${high}`} preserveAspectRatio="none" aria-hidden="true">
      <path className="line" d={section.between(0, section.length)} />
      <path className="train" ref={train} />
    </svg>
  );
}

/** A line as it is drawn: paths between two chainages of the train's way, m. */
function sectionOf(track: Track, reversed: boolean) {
  const { length } = track;
  const point = {} as TrackPoint;
  const heights = Array.from({ length: steps + 1 }, (_, i) => trackPoint(track, (length * i) / steps, point).z);
  const low = Math.min(...heights);
  const span = Math.max(Math.max(...heights) - low, 1e-3);
  const place = (chainage: number): string => {
    const share = Math.min(1, Math.max(0, chainage / length));
    const i = Math.min(steps - 1, Math.floor(share * steps));
    const height = heights[i] + (heights[i + 1] - heights[i]) * (share * steps - i);
    const x = (reversed ? 1 - share : share) * wide;
    return `${x.toFixed(1)} ${(high - clear - ((height - low) / span) * (high - 2 * clear)).toFixed(1)}`;
  };
  return {
    length,
    between(from: number, to: number): string {
      const inner = Array.from({ length: steps + 1 }, (_, i) => (length * i) / steps).filter((s) => s > from && s < to);
      return `M${[from, ...inner, to].map(place).join('L')}`;
    },
  };
}
