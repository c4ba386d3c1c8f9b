import { gradeLines, plannedHeight, steepest, type Track, trackPoint } from '../../core/track/index.ts';
import { type Scene, vehicleOf } from '../../scene/index.ts';
import { passesOf } from '../passes.ts';
import type { CompiledScene } from '../types.ts';
import type { HelixCard, PageTrack } from './types.ts';

/** Between two places of a drawn line, m: a hair on paper even of a garden railway. */
const drawnEvery = 0.02;

/** Most places of a drawn line. */
const mostPlaces = 4000;

/** Grid on which the steepest place is looked for, m: a twentieth of a short wagon. */
const steepestEvery = 0.005;

/** Every track as drawings and tables of a page show it. */
export function pageTracks({ scene, tracks }: CompiledScene): PageTrack[] {
  return scene.tracks.flatMap(({ id, name }): PageTrack[] => {
    const track = tracks.get(id);
    if (track === undefined) return [];
    const places = Math.min(mostPlaces, Math.max(2, Math.ceil(track.length / drawnEvery)));
    return [
      {
        id,
        name,
        length: track.length,
        rise: plannedHeight(track, track.length) - plannedHeight(track, 0),
        grades: gradeLines(track),
        steepest: steepest((chainage) => trackPoint(track, chainage).grade, track.length, steepestEvery),
        line: Array.from({ length: places + 1 }, (_, k) => {
          const chainage = (track.length * k) / places;
          const { x, y, z } = trackPoint(track, chainage);
          return { chainage, x, y, z };
        }),
      },
    ];
  });
}

/** A card for every helix of the railway. Heights and the way over it are those of the rails as built. */
export function helixCards(compiled: CompiledScene): HelixCard[] {
  const { scene, tracks } = compiled;
  const stock = collection(scene);
  return scene.tracks.flatMap(({ id, name }): HelixCard[] => {
    const track = tracks.get(id);
    return track === undefined ? [] : helicesOf(compiled, track, id, name, stock);
  });
}

function helicesOf(
  compiled: CompiledScene,
  track: Track,
  trackId: string,
  name: string,
  stock: Pick<HelixCard, 'tallest' | 'longest'>,
): HelixCard[] {
  const { elements, startChainage } = track.plan;
  const passes = passesOf(compiled, trackId);
  return elements.flatMap((element, index): HelixCard[] => {
    if (element.kind !== 'helix') return [];
    const from = startChainage[index];
    const to = from + element.length;
    const radius = 1 / Math.abs(element.startCurvature);
    const turns = element.length / (2 * Math.PI * radius);
    const rise = Math.abs(trackPoint(track, to).z - trackPoint(track, from).z);
    let clear: HelixCard['clear'] = null;
    for (const { chainage, rail, above } of passes) {
      if (above === null || chainage < from || chainage > to) continue;
      if (clear === null || above - rail < clear.height) clear = { height: above - rail, chainage };
    }
    return [
      {
        track: name,
        from,
        to,
        radius,
        turns,
        rise,
        perTurn: rise / turns,
        grade: rise / element.length,
        clear,
        ...stock,
      },
    ];
  });
}

/** The tallest and the longest vehicle of the collection; null where there is none. */
function collection(scene: Scene): Pick<HelixCard, 'tallest' | 'longest'> {
  const vehicles = scene.stock.map((vehicle) => vehicleOf(scene, vehicle));
  const [first] = vehicles;
  if (first === undefined) return { tallest: null, longest: null };
  const tall = vehicles.reduce((best, one) => (one.bodyHeight > best.bodyHeight ? one : best), first);
  const long = vehicles.reduce((best, one) => (one.bodyLength > best.bodyLength ? one : best), first);
  return {
    tallest: { name: tall.name, height: tall.bodyHeight },
    longest: { name: long.name, length: long.bodyLength },
  };
}
