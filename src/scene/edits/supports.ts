import { placedSupports, trackLengthMm } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneSupports, SceneTrack } from '../schema/trackSchema.ts';
import { trackOf } from './parts.ts';
import { putTrack } from './putTrack.ts';
import { mmText, tidy } from './tidy.ts';

/** The scene with the support at `index` (from 0) standing this much above its planned height, mm (negative: below). Throws RangeError in words. */
export function moveSupport(scene: Scene, trackId: string, index: number, offMm: number): Scene {
  const track = trackOf(scene, trackId);
  const { supports } = track;
  const count = placedSupports(track).length;
  if (supports === undefined || !Number.isInteger(index) || index < 0 || index >= count) {
    throw new RangeError(`${track.name} has ${count} supports; there is no number ${index + 1}.`);
  }
  return putTrack(scene, { ...track, supports: supportsWith(supports, index, tidy(offMm)) });
}

/** Supports with the one at `index` standing this much off its height, mm. */
export function supportsWith(supports: SceneSupports, index: number, offMm: number): SceneSupports {
  if (Array.isArray(supports)) {
    return supports.map((entry, at) => {
      if (at !== index) return entry;
      const { offMm: _old, ...place } = entry;
      return offMm === 0 ? place : { ...place, offMm };
    });
  }
  const others = (supports.off ?? []).filter((entry) => entry.support !== index + 1);
  if (offMm === 0) return { ...supports, off: others };
  const off = [...others, { support: index + 1, byMm: offMm }].sort((a, b) => a.support - b.support);
  return { ...supports, off };
}

/**
 * The scene with the supports of a track at even distances, mm, from `firstMm` (where the row began when left out). A support that stood off its height
 * hands that on to the one that now stands nearest; of two that meet the greater stays. Throws RangeError in words.
 */
export function setSupportsEvery(scene: Scene, trackId: string, everyMm: number, firstMm?: number): Scene {
  const track = trackOf(scene, trackId);
  const { supports } = track;
  const before = placedSupports(track);
  const first = firstMm ?? (supports !== undefined && 'everyMm' in supports ? supports.firstMm : before[0]?.atMm) ?? 0;
  if (!(everyMm > 0) || !(first >= 0)) {
    throw new RangeError('Supports need a distance of more than 0 and a first place on the track.');
  }
  const count = Math.floor((trackLengthMm(track) - first) / everyMm) + 1;
  if (count < 2) throw new RangeError(`Supports ${mmText(everyMm)} apart leave fewer than two under ${track.name}.`);
  refuseUnnumbered(scene, track, count);
  const offs = new Map<number, number>();
  for (const { atMm, offMm } of before) {
    if (offMm === 0) continue;
    const number = Math.min(count, Math.max(1, Math.round((atMm - first) / everyMm) + 1));
    if (Math.abs(offMm) > Math.abs(offs.get(number) ?? 0)) offs.set(number, offMm);
  }
  const off = [...offs].sort(([a], [b]) => a - b).map(([support, byMm]) => ({ support, byMm }));
  const row = { everyMm, ...(first > 0 && { firstMm: first }), ...(off.length > 0 && { off }) };
  return putTrack(scene, { ...track, supports: row });
}

/** Refuses a row with fewer supports than a survey of the track has numbers for. */
function refuseUnnumbered(scene: Scene, { id, name }: SceneTrack, count: number): void {
  for (const { track, name: survey, readings, fixed = [], mend } of scene.surveys ?? []) {
    if (track !== id) continue;
    const read = readings.flatMap((one) =>
      one.kind === 'rise' ? [one.fromSupport, one.toSupport] : (one.support ?? []),
    );
    const last = Math.max(0, ...read, ...fixed, ...(mend?.locked ?? []));
    if (last > count) {
      throw new RangeError(`The survey “${survey}” names support ${last} of ${name}; that leaves ${count}.`);
    }
  }
}
