import type { RoomConflict, RouteAim, RouteAnswer, RouteFound, RouteQuestion } from '../../sim/study/route/index.ts';
import { scenePoints } from '../../sim/study/sceneProfile.ts';
import { callText, wholeText } from '../studies/studyTrials.ts';

const wished: Readonly<Record<RouteAim, string>> = {
  grade: 'Least ruling grade',
  margin: 'Greatest smallest margin',
  front: 'What no other route beats in grade, room and margin',
};

/** What `best --vary` prints. */
export function bestRouteText(question: RouteQuestion, answer: RouteAnswer): string {
  const { scene, trackId, aim } = question;
  const several = question.trialIds.length > 1;
  const line = (one: RouteFound): string => {
    const call = one.probe === null ? '' : `, ${callText(one.probe, { gauge: question.gauge }, several)}`;
    const misses = one.misses.length === 0 ? '' : ` (misses: ${one.misses.map(inWords).join(', ')})`;
    const verdict = one.agrees === null ? '' : `, ${agreementText(one)}`;
    return `${(one.ruling * 100).toFixed(3)} %, takes ${(one.across * 1e3).toFixed(0)} x ${(one.along * 1e3).toFixed(0)} mm${call}${verdict}${misses}`;
  };
  const lines = answer.routes.flatMap((one) => [
    `  ${line(one)}`,
    ...one.settings.map(({ at, to }) => `      ${at} = ${Number(Number(to).toFixed(3))}`),
    ...(aim === 'front' ? [] : heightLines(one)),
  ]);
  const way = answer.inTheWay.map(({ miss, name, times }) => `${name ?? inWords(miss)} (${times})`).join(', ');
  const reason = answer.reason === null ? '' : ` First: ${answer.reason}`;
  const nothing = `  No route that was looked at keeps every limit. In the way: ${way}.${reason}`;
  return [
    `${scene.name}, ${trackId}: ruling grade with curves, room, closest call`,
    answer.present === null ? '  now: cannot be laid' : `  now: ${line({ ...answer.present, misses: [] })}`,
    ...(answer.present?.conflicts ?? []).map((one) => `       it ${conflictText(one)}`),
    `${wished[aim]}; ${sureness(answer, aim)}:`,
    ...(answer.routes.length === 0 ? [nothing] : lines),
    `${wholeText(answer.whole)}`,
  ].join('\n');
}

const heightLines = ({ points }: RouteFound): string[] =>
  (points === null ? [] : scenePoints(points)).map(
    ({ atMm, heightMm, verticalCurveLengthMm: curve }) =>
      `      ${atMm.toFixed(1).padStart(9)} mm  ${heightMm.toFixed(1).padStart(7)} mm${curve === undefined ? '' : `  curve ${curve.toFixed(0)} mm`}`,
  );

/** Exactly what is proven, by what, and what is only the best found. */
function sureness({ certainty, settings, probes, inFull }: RouteAnswer, aim: RouteAim): string {
  // A grade is geometry; a margin proven by the quasi-static pass is not yet proven for full runs.
  const by = aim === 'grade' ? '' : inFull ? ' by full runs' : ' by the quasi-static pass';
  if (certainty === 'every-setting') return `proven by looking at all ${settings} settings${by}`;
  const looked = `the best found by looking at ${probes} of ${settings} settings${by}`;
  return certainty === 'no-better-neighbour' ? `${looked}; nothing around it, a step away, is better` : looked;
}

/** Whether the full run says of a route what the quasi-static pass said. */
function agreementText({ agrees, quickPasses }: RouteFound): string {
  if (agrees) return 'as by the quasi-static pass';
  return quickPasses ? 'although it passes by the quasi-static pass' : 'although it fails by the quasi-static pass';
}

/** "runs through the Boiler by 35 mm at 1240 mm of line" */
function conflictText({ kind, name, trackId, chainage, by }: RoomConflict): string {
  const what = {
    room: 'reaches out of the room',
    obstacle: `runs into ${name}`,
    boards: 'hangs over the edge of the boards',
  }[kind];
  return `${what} by ${(by * 1e3).toFixed(0)} mm at ${(chainage * 1e3).toFixed(0)} mm of ${trackId}`;
}

const words: Readonly<Record<string, string>> = {
  radius: 'least radius',
  'vertical-radius': 'vertical curves',
  steepest: 'steepest grade',
  room: 'walls of the room',
  boards: 'edge of the boards',
  end: 'end of the track',
  heights: 'no heights keep what is asked',
  'cannot-be-laid': 'cannot be laid',
};

const inWords = (miss: string): string => words[miss] ?? miss;
