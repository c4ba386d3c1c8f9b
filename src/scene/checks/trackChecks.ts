import { placedCants } from '../cantPlaces.ts';
import { elementStartsMm, placedSupports, placeMm, profileHeights, startTurnout, stripJointsMm } from '../places.ts';
import { bounds } from '../schema/bounds.ts';
import type { ScenePlace, SceneProfilePoint, SceneTrack } from '../schema/trackSchema.ts';
import type { Problem } from './problems.ts';
import { idList, repeatedIds } from './references.ts';

/** How far a place may miss the end of a track, mm: lengths of arcs are not round numbers. */
const endSlackMm = 0.01;

const roundMm = (mm: number): string => String(Math.round(mm * 100) / 100);

/** What is wrong within one track: names, places off the track, heights and supports out of order. */
export function trackProblems(track: SceneTrack, path: string): Problem[] {
  const problems = repeatedIds(`${path}.alignment`, track.alignment);
  track.alignment.forEach((element, index) => {
    if (element.id === 'track') {
      problems.push({
        path: `${path}.alignment[${index}].id`,
        found: '"track"',
        allowed: 'any name but "track", which means the whole track',
        example: '"helix"',
      });
    }
  });
  problems.push(...turnoutProblems(track, path), ...cantProblems(track, path));
  const length = elementStartsMm(track)[track.alignment.length];
  if (length > bounds.lengthMm) {
    const allowed = `at most ${bounds.lengthMm} mm in all`;
    return [...problems, { path: `${path}.alignment`, found: `${roundMm(length)} mm of track`, allowed, example: '' }];
  }
  const offTrack = (place: ScenePlace | SceneProfilePoint, at: string) => placeProblem(track, place, at, length);
  track.profile.forEach((point, index) => {
    problems.push(...offTrack(point, `${path}.profile[${index}]`));
  });
  track.stripJoints?.forEach((joint, index) => {
    problems.push(...offTrack(joint, `${path}.stripJoints[${index}]`));
  });
  track.crossLevels?.forEach((place, index) => {
    problems.push(...offTrack(place, `${path}.crossLevels[${index}]`));
  });
  if (Array.isArray(track.supports)) {
    track.supports.forEach((support, index) => {
      problems.push(...offTrack(support, `${path}.supports[${index}]`));
    });
  }
  if (problems.length > 0) return problems;
  return [
    ...profileProblems(track, path),
    ...supportProblems(track, path),
    ...jointProblems(track, path),
    ...crossLevelProblems(track, path),
  ];
}

function crossLevelProblems(track: SceneTrack, path: string): Problem[] {
  const places = (track.crossLevels ?? []).map((place) => placeMm(track, place));
  const wrong = places.findIndex((atMm, index) => index > 0 && atMm <= places[index - 1]);
  if (wrong < 0) return [];
  return [
    {
      path: `${path}.crossLevels[${wrong}]`,
      found: `chainage ${roundMm(places[wrong])} mm after ${roundMm(places[wrong - 1])} mm`,
      allowed: 'places in the order of their chainage, no two at one place',
      example: roundMm(places[wrong - 1] + 300),
    },
  ];
}

function turnoutProblems(track: SceneTrack, path: string): Problem[] {
  try {
    startTurnout(track);
    return [];
  } catch (error) {
    const allowed = error instanceof Error ? error.message : String(error);
    return [{ path: `${path}.start.turnout`, found: 'a turnout that cannot be built', allowed, example: '' }];
  }
}

function cantProblems(track: SceneTrack, path: string): Problem[] {
  const at = (index: number) => `${path}.alignment[${index}]`;
  if (track.cant === undefined) {
    const index = track.alignment.findIndex((element) => 'cantMm' in element);
    if (index < 0) return [];
    const allowed = 'cant on curves together with the gauge in the "cant" of the track';
    return [
      {
        path: `${at(index)}.cantMm`,
        found: 'cant without a gauge',
        allowed,
        example: '"cant": { "gaugeMm": 16.5, "packed": "outer" }',
      },
    ];
  }
  return placedCants(track).gaps.map(({ element, neededMm, hasMm }) =>
    Number.isNaN(neededMm)
      ? {
          path: `${path}.cant.rampMm`,
          found: `a canted curve beside element ${element + 1} with no transition between`,
          allowed: 'a transition, or the length of the run-in',
          example: '"rampMm": 300',
        }
      : {
          path: at(element),
          found: `${roundMm(hasMm)} mm for a run-in of cant`,
          allowed: `at least the ${roundMm(neededMm)} mm that it needs`,
          example: '',
        },
  );
}

/** Branches whose main track is not further up in the file. */
export const branchProblems = (tracks: readonly SceneTrack[]): Problem[] =>
  tracks.flatMap(({ start }, index) => {
    if (!('branchOf' in start)) return [];
    const earlier = tracks.slice(0, index).map((track) => track.id);
    if (earlier.includes(start.branchOf)) return [];
    return [
      {
        path: `tracks[${index}].start.branchOf`,
        found: `"${start.branchOf}"`,
        allowed: earlier.length === 0 ? 'a track before it in the file, and there is none' : idList(earlier),
        example: JSON.stringify(earlier[0] ?? ''),
      },
    ];
  });

function placeProblem(
  track: SceneTrack,
  place: ScenePlace | SceneProfilePoint,
  path: string,
  length: number,
): Problem[] {
  const atMm = placeMm(track, place);
  if (Number.isNaN(atMm)) {
    const side = place.at?.startOf === undefined ? 'endOf' : 'startOf';
    const ids = ['track', ...track.alignment.flatMap((element) => element.id ?? [])];
    const found = `"${place.at?.[side]}", which is no element of this track`;
    return [{ path: `${path}.at.${side}`, found, allowed: idList(ids), example: JSON.stringify(ids[ids.length - 1]) }];
  }
  if (atMm >= -endSlackMm && atMm <= length + endSlackMm) return [];
  return [
    {
      path: `${path}.${place.atMm === undefined ? 'at' : 'atMm'}`,
      found: `chainage ${roundMm(atMm)} mm`,
      allowed: `a place on the track: 0 to ${roundMm(length)} mm`,
      example: roundMm(length / 2),
    },
  ];
}

function profileProblems(track: SceneTrack, path: string): Problem[] {
  const problems: Problem[] = [];
  const points = profileHeights(track);
  points.forEach((point, index) => {
    if (index > 0 && point.atMm <= points[index - 1].atMm) {
      problems.push({
        path: `${path}.profile[${index}]`,
        found: `chainage ${roundMm(point.atMm)} mm after ${roundMm(points[index - 1].atMm)} mm`,
        allowed: 'points in the order of their chainage, no two at one place',
        example: roundMm(points[index - 1].atMm + 100),
      });
    }
  });
  if (problems.length > 0) return problems;
  const half = track.profile.map((point, index) => halfCurveMm(point, points, index));
  for (let index = 1; index < points.length; index++) {
    const room = points[index].atMm - points[index - 1].atMm;
    if (half[index - 1] + half[index] > room + endSlackMm) {
      problems.push({
        path: `${path}.profile[${index}]`,
        found: `vertical curves that need ${roundMm(half[index - 1] + half[index])} mm between this point and the one before`,
        allowed: `at most the ${roundMm(room)} mm that lie between them`,
        example: '"verticalCurveLengthMm": 200',
      });
    }
  }
  return problems;
}

/** Half the plan length of the vertical curve at a point, mm: radius times the change of grade for one given by radius. */
function halfCurveMm(point: SceneProfilePoint, points: ReturnType<typeof profileHeights>, index: number): number {
  const here = points[index];
  const before = points[index - 1];
  const after = points[index + 1];
  if (before === undefined || after === undefined) return 0;
  if (point.verticalCurveLengthMm !== undefined) return point.verticalCurveLengthMm / 2;
  if (point.verticalCurveRadiusMm === undefined) return 0;
  const arriving = (here.heightMm - before.heightMm) / (here.atMm - before.atMm);
  const leaving = (after.heightMm - here.heightMm) / (after.atMm - here.atMm);
  return (point.verticalCurveRadiusMm * Math.abs(leaving - arriving)) / 2;
}

function supportProblems(track: SceneTrack, path: string): Problem[] {
  const supports = track.supports;
  if (supports === undefined) return [];
  const placed = placedSupports(track);
  if (placed.length < 2 || placed.length > bounds.supports) {
    const allowed = `2 to ${bounds.supports} supports on the track`;
    return [
      { path: `${path}.supports`, found: `${placed.length} on this track`, allowed, example: '{ "everyMm": 300 }' },
    ];
  }
  if (Array.isArray(supports)) {
    const wrong = placed.findIndex((support, index) => index > 0 && support.atMm <= placed[index - 1].atMm);
    if (wrong < 0) return [];
    return [
      {
        path: `${path}.supports[${wrong}]`,
        found: `chainage ${roundMm(placed[wrong].atMm)} mm after ${roundMm(placed[wrong - 1].atMm)} mm`,
        allowed: 'supports in the order of their chainage, no two at one place',
        example: roundMm(placed[wrong - 1].atMm + 300),
      },
    ];
  }
  const seen = new Set<number>();
  return (supports.off ?? []).flatMap((entry, index) => {
    const again = seen.has(entry.support);
    seen.add(entry.support);
    if (!again && entry.support <= placed.length) return [];
    return [
      {
        path: `${path}.supports.off[${index}].support`,
        found: again ? `${entry.support} a second time` : `support ${entry.support}`,
        allowed: `each support once, from 1 to ${placed.length}`,
        example: '1',
      },
    ];
  });
}

function jointProblems(track: SceneTrack, path: string): Problem[] {
  if (track.stripJoints === undefined || track.stripJoints.length === 0) return [];
  if (track.supports === undefined && track.measured === undefined) {
    return [
      {
        path: `${path}.stripJoints`,
        found: 'joints of a strip that rests on no supports',
        allowed: 'joints together with supports',
        example: '"supports": { "everyMm": 300 }',
      },
    ];
  }
  const joints = stripJointsMm(track);
  const twice = joints.find((atMm, index) => index > 0 && atMm === joints[index - 1]);
  if (twice === undefined) return [];
  return [
    {
      path: `${path}.stripJoints`,
      found: `two joints at ${roundMm(twice)} mm`,
      allowed: 'one joint at a place',
      example: '',
    },
  ];
}
