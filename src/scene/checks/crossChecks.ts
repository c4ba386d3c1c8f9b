import { roomProblems } from '../room/index.ts';
import { bounds } from '../schema/bounds.ts';
import type { Scene } from '../schema/schema.ts';
import { structureProblems } from '../structures.ts';
import { linesideProblems } from './linesideChecks.ts';
import type { Problem } from './problems.ts';
import { repeatedIds, unknownId } from './references.ts';
import { couplingProblems, stockProblems } from './stockChecks.ts';
import { surveyProblems } from './surveyChecks.ts';
import { tourProblems } from './tourChecks.ts';
import { branchProblems, trackProblems } from './trackChecks.ts';
import { trialProblems } from './trialChecks.ts';
import { variantProblems } from './variantChecks.ts';

/** What is wrong between the parts of a scene whose shape is right. */
export function crossProblems(scene: Scene): Problem[] {
  const problems = [
    ...repeatedIds('tracks', scene.tracks),
    ...repeatedIds('couplings', scene.couplings ?? []),
    ...repeatedIds('stock', scene.stock),
    ...repeatedIds('trains', scene.trains),
    ...repeatedIds('trials', scene.trials),
    ...variantProblems(scene),
    ...tourProblems(scene),
    ...branchProblems(scene.tracks),
    ...scene.tracks.flatMap((track, index) => trackProblems(track, `tracks[${index}]`)),
    ...couplingProblems(scene),
    ...(scene.room === undefined ? [] : roomProblems(scene.room, 'room')),
    ...(scene.structures ?? []).flatMap((one, index) => structureProblems(one, `structures[${index}]`)),
    ...(scene.lineside ?? []).flatMap((one, index) => linesideProblems(scene, one, `lineside[${index}]`)),
    ...scene.stock.flatMap((vehicle, index) => stockProblems(scene, vehicle, `stock[${index}]`)),
  ];
  scene.trains.forEach((train, index) => {
    const count = train.vehicles.reduce((sum, entry) => sum + (entry.count ?? 1), 0);
    if (count > bounds.vehicles) {
      problems.push({
        path: `trains[${index}].vehicles`,
        found: `${count} vehicles`,
        allowed: `at most ${bounds.vehicles}`,
        example: '',
      });
    }
    train.vehicles.forEach((entry, place) => {
      if (!scene.stock.some((one) => one.id === entry.stock)) {
        problems.push(
          unknownId(
            `trains[${index}].vehicles[${place}].stock`,
            entry.stock,
            scene.stock.map((one) => one.id),
          ),
        );
      }
    });
  });
  const trialIds = scene.trials.map((trial) => trial.id);
  if (scene.opensWith !== undefined && !trialIds.includes(scene.opensWith)) {
    problems.push(unknownId('opensWith', scene.opensWith, trialIds));
  }
  // What follows measures trains on tracks, so it waits until both are sound.
  if (problems.length > 0) return problems;
  const surveys = surveyProblems(scene);
  if (surveys.length > 0) return surveys;
  return scene.trials.flatMap((trial, index) => trialProblems(scene, trial, `trials[${index}]`));
}
