import type { Problem } from '../checks/problems.ts';
import { trackProblems } from '../checks/trackChecks.ts';
import { placedSupports, trackLengthMm } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneReading, SceneSurvey } from '../schema/surveySchema.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import { runsOn } from '../way.ts';
import { type ChainageMap, chainageMap, type Fate } from './chainageMap.ts';
import { fittedRoute, fittedTrial } from './fittedTrial.ts';
import { withPlacesMoved } from './movedPlaces.ts';
import { trackOf } from './parts.ts';
import { tidy } from './tidy.ts';

/**
 * The scene with another alignment of a track; `fates` says what became of each old element, or where each chainage goes, 'in-place' that every place keeps its own. Whatever is placed along it moves with the elements (see `withPlacesMoved`), in this
 * track and elsewhere: turnouts of branches, things beside the line, starts, arrivals and orders of trials, readings. Throws RangeError, in
 * words, when the result cannot be built.
 */
export function putAlignment(
  scene: Scene,
  trackId: string,
  alignment: SceneTrack['alignment'],
  fates: readonly Fate[] | ChainageMap | 'in-place',
): Scene {
  const before = trackOf(scene, trackId);
  const bare = { ...before, alignment };
  const map = fates === 'in-place' ? unmoved : isMap(fates) ? fates : chainageMap(before, bare, fates);
  refuseUnderTurnout(scene, before, map);
  return putTrack(withOthersMoved(scene, before, bare, map), withPlacesMoved(before, bare, map), map, scene);
}

/**
 * The scene with a track in the place of the one with its id, its trials fitted on it; `before` is the scene from which what else belongs to the
 * change was already made. Throws RangeError, in words, when it cannot be built.
 */
export function putTrack(scene: Scene, track: SceneTrack, map?: ChainageMap, before = scene): Scene {
  const problem = trackProblems(track, 'track')[0];
  if (problem !== undefined) throw new RangeError(`${track.name}: ${inWords(problem)}`);
  const next: Scene = { ...scene, tracks: scene.tracks.map((one) => (one.id === track.id ? track : one)) };
  const trials = next.trials.map((trial) => {
    if (!runsOn(trial, track.id)) return trial;
    if (trial.route === undefined) return fittedTrial(next, track, trial, map);
    return fittedRoute(next, trial, { trackId: track.id, before, map });
  });
  return { ...next, trials };
}

/** A problem as one sentence. */
export const inWords = ({ found, allowed }: Problem): string => `that gives ${found}, where ${allowed} can stand.`;

const isMap = (fates: readonly Fate[] | ChainageMap): fates is ChainageMap => 'gone' in fates;

const unmoved: ChainageMap = { at: (mm) => mm, gone: () => false };

function refuseUnderTurnout(scene: Scene, track: SceneTrack, map: ChainageMap): void {
  const branch = scene.tracks.find(
    ({ start }) => 'branchOf' in start && start.branchOf === track.id && map.gone(start.atMm),
  );
  if (branch === undefined) return;
  throw new RangeError(
    `The turnout of ${branch.name} lies in what is taken out of ${track.name}: remove that track first.`,
  );
}

/** Turnouts of branches, things beside the line and readings go where the track they belong to went. */
function withOthersMoved(scene: Scene, before: SceneTrack, after: SceneTrack, map: ChainageMap): Scene {
  const own = <T extends { readonly track: string }>(one: T): boolean => one.track === before.id;
  const lengthMm = trackLengthMm(after);
  const there = isThere(after, map);
  return {
    ...scene,
    tracks: scene.tracks.map((track) =>
      'branchOf' in track.start && track.start.branchOf === before.id
        ? { ...track, start: { ...track.start, atMm: tidy(map.at(track.start.atMm)) } }
        : track,
    ),
    ...(scene.lineside && {
      lineside: scene.lineside.flatMap((thing) => {
        if (!own(thing)) return [thing];
        if (thing.kind === 'portal') return there(thing.atMm) ? [{ ...thing, atMm: tidy(map.at(thing.atMm)) }] : [];
        const [fromMm, toMm] = [tidy(map.at(thing.fromMm)), tidy(Math.min(map.at(thing.toMm), lengthMm))];
        return toMm > fromMm ? [{ ...thing, fromMm, toMm }] : [];
      }),
    }),
    ...(scene.surveys && {
      surveys: scene.surveys.flatMap((survey) => (own(survey) ? movedSurvey(survey, before, after, map) : [survey])),
    }),
  };
}

/** Whether a place of the track as it was is still on it: neither taken out nor beyond an end that has come nearer. */
function isThere(after: SceneTrack, map: ChainageMap): (mm: number) => boolean {
  const lengthMm = trackLengthMm(after);
  return (mm) => !map.gone(mm) && tidy(map.at(mm)) <= lengthMm;
}

/**
 * Readings go with the places they were taken at; those whose place or support is gone are dropped, and a survey with none
 * left.
 */
function movedSurvey(survey: SceneSurvey, before: SceneTrack, after: SceneTrack, map: ChainageMap): SceneSurvey[] {
  const renumbered = newNumbers(before, after, map);
  const stays = isThere(after, map);
  const moved = (reading: SceneReading): SceneReading | null => {
    if (reading.kind === 'rise') {
      const [fromSupport, toSupport] = [renumbered(reading.fromSupport), renumbered(reading.toSupport)];
      return fromSupport === null || toSupport === null ? null : { ...reading, fromSupport, toSupport };
    }
    if (reading.atMm !== undefined) {
      return stays(reading.atMm) ? { ...reading, atMm: tidy(map.at(reading.atMm)) } : null;
    }
    const support = renumbered(reading.support ?? 0);
    return support === null ? null : { ...reading, support };
  };
  const readings = survey.readings.flatMap((reading) => moved(reading) ?? []);
  if (readings.length === 0) return [];
  const there = (numbers: readonly number[]): number[] => numbers.flatMap((number) => renumbered(number) ?? []);
  const { fixed, mend } = survey;
  return [
    {
      ...survey,
      readings,
      ...(fixed && { fixed: there(fixed) }),
      ...(mend?.locked && { mend: { ...mend, locked: there(mend.locked) } }),
    },
  ];
}

/** What each support is numbered afterwards; null for one that is gone. */
function newNumbers(before: SceneTrack, after: SceneTrack, map: ChainageMap): (number: number) => number | null {
  if (!Array.isArray(before.supports)) {
    const count = placedSupports(after).length;
    return (number) => (number <= count ? number : null);
  }
  let next = 0;
  const numbers = placedSupports(before).map(({ atMm }) => (map.gone(atMm) ? null : ++next));
  return (number) => numbers[number - 1] ?? null;
}
