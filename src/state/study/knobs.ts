import { firstThat } from '../../core/math/index.ts';
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
import { tracksUnder, vary } from '../../sim/study/index.ts';

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
  for (const trial of scene.trials) {
    const knob = routeEasementsKnob(scene, trial);
    if (knob !== null) put(trial.name, knob);
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

/** What people call the place at an address, "Gill line, mouth: length", and its unit; the address itself where the file has no number there. */
export function placeWords(scene: Scene, at: Address): { readonly words: string; readonly unit: string } {
  for (const { name, knobs } of knobGroups(scene)) {
    const knob = knobs.find((one) => one.at === at);
    if (knob !== undefined) return { words: `${name}, ${knob.label}`, unit: knob.unit };
  }
  return { words: at.split('/').join(' › '), unit: '' };
}

/** A range worth sweeping around a number: half to one and a half times it, or a little either way of nothing. */
export function usualRange({ value, least, most, whole, at }: Knob): readonly [number, number] {
  if (isEasements(at)) return [Math.min(usualEasements[0], rounded(most / 4)), Math.min(usualEasements[1], most)];
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
    if (isEasements(at)) return eased(sofar, easedTracks(sofar, at), to);
    const varied = vary(sofar, [{ at, to }]);
    if (!varied.ok) throw new RangeError(varied.reason);
    return varied.scene;
  }, scene);
}

/** The key of all easements of a track, or of all the tracks that a trial runs over. */
export const easementsKey = (trackId: string): string => `tracks/${trackId}/easements`;
const routeEasementsKey = (trialId: string): string => `trials/${trialId}/easements`;

const isEasements = (at: string): boolean => /^(tracks|trials)\/[^/]+\/easements$/.test(at);

/** The key of all the easements that a trial runs over: those of its track, or of all the tracks of its route that bend at all. */
export function easementsUnder(scene: Scene, trialId: string): string {
  const [first, ...others] = bending(scene, tracksUnder(scene, [trialId]));
  return first === undefined || others.length > 0 ? routeEasementsKey(trialId) : easementsKey(first);
}

/** Addresses that turning a knob changes: what asks whom a change matters to. */
export const turnedAt = (scene: Scene, at: string): readonly Address[] =>
  isEasements(at) ? easedTracks(scene, at).map(easementsKey) : [at];

/** Tracks whose easements a key stands for. */
function easedTracks(scene: Scene, at: string): string[] {
  const [list, id] = at.split('/');
  return list === 'trials' ? bending(scene, tracksUnder(scene, [id])) : [id];
}

/** Of some tracks those that have an easement, or a place for one. */
const bending = (scene: Scene, trackIds: readonly string[]): string[] =>
  scene.tracks.flatMap((track) => (trackIds.includes(track.id) && easementPlaces(track).length > 0 ? [track.id] : []));

const eased = (scene: Scene, trackIds: readonly string[], lengthMm: number): Scene =>
  trackIds.reduce((sofar, trackId) => setAllEasements(sofar, trackId, lengthMm), scene);

/** Easements that are asked about, mm: from what no eye sees to three times what is usual for the largest radii indoors. */
const leastEasement = 10;
const longestEasement = 1500;

const easementsKnob = (scene: Scene, { id }: SceneTrack): Knob | null =>
  knobOfEasements(scene, easementsKey(id), [id], 'this track; its');

/** Of a trial over several tracks that bend; one track alone has its own. */
function routeEasementsKnob(scene: Scene, { id, route }: Scene['trials'][number]): Knob | null {
  const trackIds = route === undefined ? [] : bending(scene, tracksUnder(scene, [id]));
  return trackIds.length < 2
    ? null
    : knobOfEasements(scene, routeEasementsKey(id), trackIds, 'all tracks of its route; their');
}

function knobOfEasements(scene: Scene, at: string, trackIds: readonly string[], of: string): Knob | null {
  const places = scene.tracks.flatMap((track) => (trackIds.includes(track.id) ? easementPlaces(track) : []));
  const most = places.length === 0 ? 0 : longestThatFits(scene, trackIds);
  if (most <= leastEasement) return null;
  return {
    at,
    label: 'all easements: length',
    unit: 'mm',
    value: Math.min(...places.map(({ lengthMm }) => lengthMm)),
    least: leastEasement,
    most,
    whole: false,
    about: `Length of every easement of ${of} elements have room for ${most} mm.`,
    field: 'tracks/1/alignment/1/lengthMm',
  };
}

/** The longest easement, whole mm, that every place of some tracks has room for; 0 where there is none. */
function longestThatFits(scene: Scene, trackIds: readonly string[]): number {
  const fits = (lengthMm: number): boolean => {
    try {
      eased(scene, trackIds, lengthMm);
      return true;
    } catch (error) {
      if (error instanceof RangeError) return false;
      throw error;
    }
  };
  return firstThat(1, longestEasement + 1, (lengthMm) => !fits(lengthMm)) - 1;
}
