import { trackLengthMm } from '../places.ts';
import type { SceneTrack } from '../schema/trackSchema.ts';
import type { SceneTrial } from '../schema/trialSchema.ts';
import type { WayLeg } from '../way.ts';
import type { Problem } from './problems.ts';

const roundMm = (mm: number): string => String(Math.round(mm * 100) / 100);

/** How far a leg may miss the end of its track, mm: lengths of arcs are not round numbers. */
const endSlackMm = 0.01;

const oneTrialEach =
  'a route that is run one way without setting back; a train that has to clear a turnout and set back needs a trial for each way';

/** What is wrong with the route of a trial whose tracks are there: places off the tracks, legs run the wrong way, turnouts that face the other way. */
export function routeProblems(trial: SceneTrial, way: readonly WayLeg[], path: string): Problem[] {
  const { route } = trial;
  if (route === undefined) return [];
  return route.flatMap((leg, index) => {
    const at = `${path}.route[${index}]`;
    const { track, fromMm, toMm } = way[index];
    const off = offTrack(track, [leg.fromMm, leg.toMm], at);
    if (off.length > 0) return off;
    if ((leg.towards === 'end') !== toMm > fromMm || fromMm === toMm) {
      const wanted = leg.towards === 'end' ? 'beyond' : 'before';
      return [
        {
          path: at,
          found: `a leg from ${roundMm(fromMm)} to ${roundMm(toMm)} mm of "${track.id}", towards its ${leg.towards}`,
          allowed: `a leg that ends ${wanted} where it begins, or towards the other end`,
          example: `"towards": "${leg.towards === 'end' ? 'start' : 'end'}"`,
        },
      ];
    }
    const before = route[index - 1];
    return before === undefined ? [] : turnoutProblems(way[index - 1], way[index], at);
  });
}

function offTrack(track: SceneTrack, [fromMm, toMm]: readonly (number | undefined)[], at: string): Problem[] {
  const length = trackLengthMm(track);
  const ends = { fromMm, toMm };
  return Object.entries(ends).flatMap(([name, mm]) =>
    mm === undefined || mm <= length + endSlackMm
      ? []
      : [
          {
            path: `${at}.${name}`,
            found: `chainage ${roundMm(mm)} mm`,
            allowed: `a place on "${track.id}": 0 to ${roundMm(length)} mm`,
            example: roundMm(length / 2),
          },
        ],
  );
}

/** A turnout is run through from its front, or towards its front: from leg to leg one way. */
function turnoutProblems(before: WayLeg, after: WayLeg, at: string): Problem[] {
  const onto = leads(before, after);
  const off = leads(
    { ...after, fromMm: after.toMm, toMm: after.fromMm },
    { ...before, fromMm: before.toMm, toMm: before.fromMm },
  );
  if (onto !== 'against' && off !== 'against') return [];
  const [main, branch] = onto === 'against' ? [before.track, after.track] : [after.track, before.track];
  const start = branch.start as Extract<SceneTrack['start'], { branchOf: string }>;
  return [
    {
      path: at,
      found: `a way from "${before.track.id}" onto "${after.track.id}" against its turnout, which leads off "${main.id}" towards its ${start.towards}`,
      allowed: oneTrialEach,
      example: '',
    },
  ];
}

/** Whether a train that leaves `main` at the turnout of `branch` and runs on along that goes as the turnout leads; null where it does not go through it. */
function leads(main: WayLeg, branch: WayLeg): 'along' | 'against' | null {
  const { start } = branch.track;
  if (!('branchOf' in start) || start.branchOf !== main.track.id) return null;
  if (Math.abs(main.toMm - start.atMm) > endSlackMm || branch.fromMm > endSlackMm) return null;
  return main.toMm > main.fromMm === (start.towards === 'end') ? 'along' : 'against';
}
