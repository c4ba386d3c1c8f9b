import { elementCurvatures } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneTrial } from '../schema/trialSchema.ts';
import { type TrainPlace, trainLength, trainPlaces } from '../trains.ts';
import { leadingEnds } from '../trialEnds.ts';
import { trackIdsOf, type WayLeg, wayLengthMm, wayOf } from '../way.ts';
import { followProblems } from './followChecks.ts';
import type { Problem } from './problems.ts';
import { unknownId } from './references.ts';
import { routeProblems } from './routeChecks.ts';

const roundMm = (mm: number): string => String(Math.round(mm * 10) / 10);

/** What is wrong with one trial of a scene whose tracks and vehicles are sound. */
export function trialProblems(scene: Scene, trial: SceneTrial, path: string): Problem[] {
  const way = wayOf(scene, trial);
  const train = scene.trains.find((one) => one.id === trial.train);
  const tracks = scene.tracks.map((one) => one.id);
  const problems = trackIdsOf(trial).flatMap((id, index) => {
    const at = trial.route === undefined ? `${path}.track` : `${path}.route[${index}].track`;
    return tracks.includes(id) ? [] : [unknownId(at, id, tracks)];
  });
  if (train === undefined)
    problems.push(
      unknownId(
        `${path}.train`,
        trial.train,
        scene.trains.map((one) => one.id),
      ),
    );
  problems.push(...followProblems(scene, trial, path));
  if (way === null || train === undefined || problems.length > 0) return problems;
  const wrong = routeProblems(trial, way, path);
  if (wrong.length > 0) return wrong;
  const places = trainPlaces(scene, train);
  return [
    ...couplingProblems(places, path),
    ...fitProblems(way, places, trial, path),
    ...orderProblems(way, places, trial, path),
    ...passerProblems(scene, trial, path),
    ...recordProblems(trial, path),
  ];
}

/** Ends of different families do not couple. */
function couplingProblems(places: readonly TrainPlace[], path: string): Problem[] {
  for (let joint = 0; joint + 1 < places.length; joint++) {
    const a = places[joint];
    const b = places[joint + 1];
    const before = a.turned ? a.vehicle.front : a.vehicle.rear;
    const after = b.turned ? b.vehicle.rear : b.vehicle.front;
    if (before.coupling.kind !== after.coupling.kind) {
      return [
        {
          path: `${path}.train`,
          found: `a ${before.coupling.kind} coupling on vehicle ${joint + 1} (${a.vehicle.name}) that meets a ${after.coupling.kind} coupling on vehicle ${joint + 2} (${b.vehicle.name})`,
          allowed: 'the same kind of coupling on both ends of a joint',
          example: `"rearCoupling": the id of a ${after.coupling.kind} coupling`,
        },
      ];
    }
  }
  return [];
}

function fitProblems(
  way: readonly WayLeg[],
  places: readonly TrainPlace[],
  trial: SceneTrial,
  path: string,
): Problem[] {
  const what = trial.route === undefined ? 'track' : 'route';
  const lengthMm = wayLengthMm(way);
  const trainMm = trainLength(places) * 1000;
  if (trainMm >= lengthMm) {
    const found = `a train of ${roundMm(trainMm)} mm on a ${what} of ${roundMm(lengthMm)} mm`;
    return [{ path: `${path}.train`, found, allowed: `a train shorter than its ${what}`, example: '' }];
  }
  const sharpest = Math.max(
    ...way.flatMap(({ track }) => track.alignment.flatMap((_, index) => elementCurvatures(track, index).map(Math.abs))),
  );
  const widest = places.find((place) => place.vehicle.pivotSpacing * sharpest > 1);
  if (widest !== undefined) {
    return [
      {
        path: `${path}.train`,
        found: `${widest.vehicle.name}, running points ${roundMm(widest.vehicle.pivotSpacing * 1000)} mm apart, on a curve of ${roundMm(1000 / sharpest)} mm radius`,
        allowed: 'running points no further apart than the sharpest radius',
        example: '',
      },
    ];
  }
  const problems: Problem[] = [];
  const { startMm, finishMm, forward } = leadingEnds(lengthMm, trainMm, trial);
  const least = forward ? trainMm : 0;
  const most = forward ? lengthMm : lengthMm - trainMm;
  // Where a trial takes its train over from another is seen when it is run.
  const taken = trial.follows !== undefined;
  if (!taken && (startMm < least || startMm > most)) {
    problems.push({
      path: `${path}.startMm`,
      found: `the leading end at ${roundMm(startMm)} mm`,
      allowed: `${roundMm(least)} to ${roundMm(most)} mm, so that the whole train of ${roundMm(trainMm)} mm stands on the ${what}`,
      example: roundMm(forward ? least + 10 : most - 10),
    });
  }
  const short = !taken && (forward ? finishMm <= startMm : finishMm >= startMm);
  if (finishMm > lengthMm || short) {
    problems.push({
      path: `${path}.finishMm`,
      found: `arrival at ${roundMm(finishMm)} mm, start at ${roundMm(startMm)} mm, towards the ${forward ? 'end' : 'start'} of the ${what}`,
      allowed: forward ? `beyond the start, up to ${roundMm(lengthMm)} mm` : 'less than the start, down to 0 mm',
      example: roundMm(forward ? lengthMm : 0),
    });
  }
  return problems;
}

function orderProblems(
  way: readonly WayLeg[],
  places: readonly TrainPlace[],
  trial: SceneTrial,
  path: string,
): Problem[] {
  const lengthMm = wayLengthMm(way);
  return trial.orders.flatMap((order, index) => {
    const problems: Problem[] = [];
    if (order.atMm !== undefined && order.atMm > lengthMm) {
      problems.push({
        path: `${path}.orders[${index}].atMm`,
        found: `chainage ${roundMm(order.atMm)} mm`,
        allowed: `a place on the ${trial.route === undefined ? 'track' : 'route'}: 0 to ${roundMm(lengthMm)} mm`,
        example: roundMm(lengthMm / 2),
      });
    }
    if (order.vehicle !== undefined && places[order.vehicle - 1]?.vehicle.drive == null) {
      const driven = places.flatMap((place, at) => (place.vehicle.drive === null ? [] : at + 1));
      problems.push({
        path: `${path}.orders[${index}].vehicle`,
        found: `vehicle ${order.vehicle}, which has no drive`,
        allowed: driven.length === 0 ? 'no vehicle of this train: none has a drive' : `one of ${driven.join(', ')}`,
        example: String(driven[0] ?? ''),
      });
    }
    return problems;
  });
}

function passerProblems(scene: Scene, trial: SceneTrial, path: string): Problem[] {
  const ids = scene.stock.map((one) => one.id);
  return (trial.passers ?? []).flatMap((id, index) =>
    ids.includes(id) ? [] : [unknownId(`${path}.passers[${index}]`, id, ids)],
  );
}

function recordProblems(trial: SceneTrial, path: string): Problem[] {
  const problems: Problem[] = [];
  const ratio = trial.frameMs === undefined || trial.stepMs === undefined ? 1 : trial.frameMs / trial.stepMs;
  // Decimal milliseconds are not exact in binary: a millionth off a whole number is whole.
  if (Math.abs(ratio - Math.round(ratio)) > 1e-6 || ratio < 1 - 1e-6) {
    problems.push({
      path: `${path}.frameMs`,
      found: `frames every ${trial.frameMs} ms with a step of ${trial.stepMs} ms`,
      allowed: 'a whole multiple of the step',
      example: String((trial.stepMs ?? 1) * 20),
    });
  }
  return problems;
}
