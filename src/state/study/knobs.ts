import {
  type Address,
  easementPlaces,
  fieldName,
  fieldUnit,
  type Scene,
  type SceneTrack,
  sceneQuantities,
  setAllEasements,
} from '../../scene/index.ts';
import { vary } from '../../sim/study/index.ts';

/** Something of a railway that a person can turn: one number of the file, or all easements of a track at once. */
export interface Knob {
  /** The number's address; for all easements of a track `tracks/<id>/easements`. */
  readonly at: string;
  /** "spiral: radius" */
  readonly label: string;
  /** As it is written; nothing for a plain number. */
  readonly unit: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly whole: boolean;
  readonly about: string;
  /** A field whose words are read for it. */
  readonly field: Address;
}

export interface KnobGroup {
  readonly name: string;
  readonly knobs: readonly Knob[];
}

/** What a study can turn, under what it belongs to: first what a builder asks of a whole track, then every number of the file. */
export function knobGroups(scene: Scene): KnobGroup[] {
  const groups = new Map<string, Knob[]>();
  const put = (group: string, knob: Knob) => {
    const list = groups.get(group) ?? [];
    list.push(knob);
    groups.set(group, list);
  };
  for (const track of scene.tracks) {
    const knob = easementsKnob(scene, track);
    if (knob !== null) put(track.name, knob);
  }
  for (const { of, ...quantity } of sceneQuantities(scene)) {
    const [group = 'The whole railway', ...parts] = of;
    const { at } = quantity;
    const own = at.startsWith('deck/') ? `deck ${fieldName(at)}` : fieldName(at);
    const label = parts.length === 0 ? own : `${parts.join(', ')}: ${own}`;
    put(group, { ...quantity, label, unit: fieldUnit(at), field: at });
  }
  return [...groups].map(([name, knobs]) => ({ name, knobs }));
}

/** One of them by its key; null when it is not there. */
export const knobAt = (scene: Scene, at: string): Knob | null =>
  knobGroups(scene)
    .flatMap(({ knobs }) => knobs)
    .find((one) => one.at === at) ?? null;

/** A range worth sweeping around a number: half to one and a half times it, or a little either way of nothing. */
export function usualRange({ value, least, most, whole, at }: Knob): readonly [number, number] {
  if (easementsOf(at) !== null)
    return [Math.min(usualEasements[0], rounded(most / 4)), Math.min(usualEasements[1], most)];
  const spread = value === 0 ? (whole ? 2 : 5) : Math.abs(value) / 2;
  const low = Math.max(least, value - spread);
  const high = Math.min(most, value + spread);
  return whole ? [Math.floor(low), Math.ceil(high)] : [rounded(low), rounded(high)];
}

/** Easements worth a look, mm: from less than a coach to more than two. */
const usualEasements = [50, 600] as const;

/** Three significant digits, as a person would type it. */
const rounded = (value: number): number => Number(value.toPrecision(3));

/** The railway with knobs set, checked as a file is. Throws RangeError in words where it cannot be laid. */
export function turned(scene: Scene, settings: readonly { readonly at: string; readonly to: number }[]): Scene {
  return settings.reduce((sofar, { at, to }) => {
    const trackId = easementsOf(at);
    if (trackId !== null) return setAllEasements(sofar, trackId, to);
    const varied = vary(sofar, [{ at, to }]);
    if (!varied.ok) throw new RangeError(varied.reason);
    return varied.scene;
  }, scene);
}

const easementsOf = (at: string): string | null => /^tracks\/([^/]+)\/easements$/.exec(at)?.[1] ?? null;

/** The key of all easements of a track. */
export const easementsKey = (trackId: string): string => `tracks/${trackId}/easements`;

/** Easements that are asked about, mm: from what no eye sees to three times what is usual for the largest radii indoors. */
const leastEasement = 10;
const longestEasement = 1500;

function easementsKnob(scene: Scene, track: SceneTrack): Knob | null {
  const places = easementPlaces(track);
  const most = places.length === 0 ? 0 : longestThatFits(scene, track.id);
  if (most <= leastEasement) return null;
  return {
    at: easementsKey(track.id),
    label: 'all easements: length',
    unit: 'mm',
    value: Math.min(...places.map(({ lengthMm }) => lengthMm)),
    least: leastEasement,
    most,
    whole: false,
    about: `Length of every easement of this track; its elements have room for ${most} mm.`,
    field: 'tracks/1/alignment/1/lengthMm',
  };
}

/** The longest easement, whole mm, that every place of the track has room for; 0 where there is none. */
function longestThatFits(scene: Scene, trackId: string): number {
  const fits = (lengthMm: number): boolean => {
    try {
      setAllEasements(scene, trackId, lengthMm);
      return true;
    } catch (error) {
      if (error instanceof RangeError) return false;
      throw error;
    }
  };
  let low = 0;
  let high = longestEasement + 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
