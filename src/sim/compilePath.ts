import { routePath } from '../core/dynamics/index.ts';
import type { Path } from '../core/dynamics/types.ts';
import { isJoint, type JoinJump, type RouteStretch, reverseTrack, type Track } from '../core/track/index.ts';
import { type SceneTrial, wayOf } from '../scene/index.ts';
import type { CompiledScene } from './types.ts';

const mm = 1e-3;

/** A chainage this near to an end of its track is the end, m: arc lengths are not round numbers. */
const endSlack = 1e-5;

/** Two stretches whose headings differ by more than a right angle meet head on. */
const headOn = Math.PI / 2;

/**
 * The way a trial takes, and where two legs of its route do not quite meet. Throws RangeError, naming the legs, where a route has a gap or a step, or
 * would have to be run back.
 */
export function compilePath(
  { scene, tracks }: CompiledScene,
  trial: SceneTrial,
): { readonly path: Path; readonly joints: readonly JoinJump[] } {
  const way = wayOf(scene, trial) ?? [];
  const laid = way.map(({ track }) => {
    const one = tracks.get(track.id);
    if (one === undefined) throw new RangeError(`Track "${track.id}" was not compiled.`);
    return one;
  });
  if (trial.route === undefined) {
    const reversed = trial.towards === 'start';
    return { path: { track: reversed ? reverseTrack(laid[0]) : laid[0], reversed }, joints: [] };
  }
  const stretches = way.map(
    ({ fromMm, toMm }, leg): RouteStretch => ({
      track: laid[leg],
      from: onTrack(laid[leg], fromMm * mm),
      to: onTrack(laid[leg], toMm * mm),
    }),
  );
  const { path, misfits } = routePath(stretches);
  const legs = path.legs ?? [];
  for (const misfit of misfits) {
    if (isJoint(misfit)) continue;
    const leg = legs.findIndex(({ start }) => start === misfit.chainage);
    const from = `route[${leg - 1}] ("${way[leg - 1].track.id}" to ${Math.round(way[leg - 1].toMm)} mm)`;
    const onto = `route[${leg}] ("${way[leg].track.id}" from ${Math.round(way[leg].fromMm)} mm)`;
    throw new RangeError(`Trial "${trial.id}": ${onto} does not go on where ${from} ends: ${missText(misfit)}`);
  }
  return { path, joints: misfits };
}

function missText({ position, heading }: JoinJump): string {
  if (Math.abs(heading) > headOn) {
    return 'the train would have to set back there. A route is run one way; give each way a trial of its own.';
  }
  const degrees = ((Math.abs(heading) * 180) / Math.PI).toFixed(2);
  return `it lies ${(position / mm).toFixed(1)} mm away and turns by ${degrees}°, where 1 mm and 1° are allowed. Set fromMm and toMm to where the tracks meet.`;
}

const onTrack = ({ length }: Track, chainage: number): number =>
  Math.abs(chainage - length) < endSlack ? length : chainage;
