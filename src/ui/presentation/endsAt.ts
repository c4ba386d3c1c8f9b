import type { Run } from '../../core/dynamics/types.ts';
import { frameAt } from '../band/frame/motion.ts';

/** Path chainages of the hindmost and the foremost vehicle of a run at a time (s), m; between frames in a straight line. */
export function endsAt(
  { time, chainage, vehicles }: Pick<Run, 'time' | 'chainage' | 'vehicles'>,
  now: number,
): readonly [tail: number, head: number] {
  const { frame, share } = frameAt(time, now);
  const at = (vehicle: number): number => {
    const from = chainage[frame * vehicles + vehicle];
    return share > 0 ? from + share * (chainage[(frame + 1) * vehicles + vehicle] - from) : from;
  };
  const [first, last] = [at(0), at(vehicles - 1)];
  return first < last ? [first, last] : [last, first];
}
