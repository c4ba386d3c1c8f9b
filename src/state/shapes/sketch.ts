import { newTrackPoint, trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import type { Scene } from '../../scene/index.ts';
import { draftTrack } from '../routeEdits/draftTrack.ts';

/** A railway as a small drawing: paths for an SVG whose `viewBox` is given. */
export interface SceneSketch {
  readonly viewBox: string;
  /** One a track. */
  readonly lines: readonly string[];
  /** Upright strokes from the track to the lowest level; none seen from straight above. */
  readonly posts: string;
  /** What all of it measures in plan, m. */
  readonly width: number;
  readonly depth: number;
  /** How many times as broad it is drawn as it is: more than 1 for a long, thin railway, whose tracks would run into one line. */
  readonly broader: number;
}

/** Steps a track is drawn in. */
const steps = 240;
/** Posts a track is drawn with. */
const posts = 24;
/** Seen from the side: depth is shortened to this, and heights are drawn larger, since a climb is small beside its length. */
const shortened = 0.42;
const raised = 1.6;
/** A railway thinner than the first of these, as a share of its length, is drawn as broad as the second; at most so many times. */
const [thin, broad, mostBroader] = [0.1, 0.16, 10];
/** Room around the drawing, as a share of its larger side. */
const border = 0.04;

/** Draws the tracks of a scene, seen from above or from the side; null where it has none that can be drawn. */
export function sketchOf(scene: Scene, view: 'above' | 'side'): SceneSketch | null {
  const tracks = scene.tracks.flatMap(({ id }) => draftTrack(scene, id) ?? []);
  if (tracks.length === 0) return null;
  const points = tracks.map(pointsOf);
  const all = points.flat();
  const lowest = Math.min(...all.map(({ z }) => z));
  const [west, east] = spanOf(all.map(({ x }) => x));
  const [south, north] = spanOf(all.map(({ y }) => y));
  const [width, depth] = [east - west, north - south];
  const isThin = depth > 0 && depth < thin * width;
  const broader = isThin ? Math.min(mostBroader, (broad * width) / depth) : 1;
  const onPaper = ({ x, y, z }: Point): readonly [number, number] => {
    const aside = (y - south) * broader;
    return view === 'above' ? [x, -aside] : [x + aside * 0.35, -aside * shortened - (z - lowest) * raised];
  };
  const drawn = points.map((line) => line.map(onPaper));
  const stems =
    view === 'above'
      ? []
      : points.flatMap((line) =>
          line
            .filter((_, index) => index % (steps / posts) === 0)
            .map((point) => [onPaper(point), onPaper({ ...point, z: lowest })] as const),
        );
  const corners = [...drawn.flat(), ...stems.flat()];
  const [left, right] = spanOf(corners.map(([x]) => x));
  const [top, foot] = spanOf(corners.map(([, y]) => y));
  const room = border * Math.max(right - left, foot - top, 0.1);
  const box = [left - room, top - room, right - left + 2 * room, foot - top + 2 * room];
  return {
    viewBox: box.map(short).join(' '),
    lines: drawn.map((line) => `M${line.map((at) => at.map(short).join(',')).join('L')}`),
    posts: stems.map((stem) => `M${stem.map((at) => at.map(short).join(',')).join('L')}`).join(''),
    width,
    depth,
    broader,
  };
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function pointsOf(track: Track): Point[] {
  const point = newTrackPoint();
  return Array.from({ length: steps + 1 }, (_, step) => {
    const { x, y, z } = trackPoint(track, (track.length * step) / steps, point);
    return { x, y, z };
  });
}

const spanOf = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];

/** Millimetres are fine enough for a drawing of a few cm. */
const short = (metres: number): string => String(Math.round(metres * 1000) / 1000);
