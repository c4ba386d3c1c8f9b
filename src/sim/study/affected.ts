import { type Address, type Scene, trackIdsOf, trialsBefore } from '../../scene/index.ts';

/**
 * Ids of the trials that a change at this address can make a difference to, by what they run on and with; all of them when it is
 * nobody's own (a coupling, the deck), with those that go on from one of them. A track's change is looked at on that track alone, not on those above and below it.
 */
export function affectedTrials(scene: Scene, at: Address): string[] {
  const [list, id] = at.split('/');
  const users = scene.trials.filter((trial) => {
    if (list === 'trials') return trial.id === id;
    if (list === 'tracks') return trackIdsOf(trial).some((own) => restsOn(scene.tracks, own, id));
    if (list === 'trains') return trial.train === id;
    if (list !== 'stock') return true;
    const train = scene.trains.find((one) => one.id === trial.train);
    return train?.vehicles.some(({ stock }) => stock === id) === true;
  });
  const reached = scene.trials.filter((trial) =>
    [trial, ...trialsBefore(scene, trial)].some((one) => users.includes(one)),
  );
  return reached.map((trial) => trial.id);
}

/** Whether a track is another one, or branches off it, or off one that does. */
export function restsOn(tracks: Scene['tracks'], id: string, other: string | undefined): boolean {
  if (id === other) return true;
  const start = tracks.find((track) => track.id === id)?.start;
  // A branch stands below its main track in the file, so this ends.
  return start !== undefined && 'branchOf' in start && restsOn(tracks, start.branchOf, other);
}

/** Ids of the tracks that some trials run over, each once, in the order of the file. */
export function tracksUnder(scene: Scene, trialIds: readonly string[]): string[] {
  const used = new Set(scene.trials.filter(({ id }) => trialIds.includes(id)).flatMap(trackIdsOf));
  return scene.tracks.flatMap(({ id }) => (used.has(id) ? [id] : []));
}
