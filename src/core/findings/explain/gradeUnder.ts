import { hypot } from '../../math/index.ts';
import type { Frame, RiskContext } from '../../risks/types.ts';
import { trackPoint } from '../../track/index.ts';
import type { Situation } from '../situation.ts';
import type { Cause } from '../types.ts';

/** Flatter than this nobody calls a grade: 1 in 1000. */
const flattest = 0.001;

/** Wider than this a curve costs nothing that counts, m. */
const widest = 10;

/** Mean grade under a posed train, weighted by mass, as the train meets it. */
export function gradeUnder({ train }: RiskContext, frame: Frame): number {
  let mass = 0;
  let rise = 0;
  train.vehicles.forEach((vehicle, i) => {
    const { ahead } = frame.placements[i];
    mass += vehicle.mass;
    rise += (vehicle.mass * ahead[2]) / hypot(ahead[0], ahead[1]);
  });
  return rise / mass;
}

export function gradeCause({ context, frame }: Situation): Cause[] {
  const grade = gradeUnder(context, frame);
  return Math.abs(grade) < flattest ? [] : [{ kind: 'grade', grade }];
}

/** The tightest curve any vehicle stands in. */
export function curveCause({ context, frame }: Situation): Cause[] {
  let sharpest = 0;
  for (const { chainage } of frame.placements) {
    sharpest = Math.max(sharpest, Math.abs(trackPoint(context.path.track, chainage).curvature));
  }
  return sharpest * widest < 1 ? [] : [{ kind: 'curve', radius: 1 / sharpest }];
}
