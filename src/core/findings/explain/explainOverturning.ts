import { trackPoint } from '../../track/index.ts';
import type { Situation } from '../situation.ts';
import { vehicleCurve } from './curves.ts';
import { bestCures, type Candidate, type Explainer } from './explainer.ts';
import { highestStep, settingSteps } from './pullCures.ts';
import { leastPassing } from './search.ts';
import { marginOnRoute } from './steadyTrial.ts';

/** Running slower, as much as it takes; nothing where standing still would not help. */
function slower({ trial, worst, definition }: Situation): Candidate[] {
  const now = Math.ceil(highestStep(trial));
  const marginAt = (step: number): number =>
    marginOnRoute(trial, definition.id, { factor: step / highestStep(trial) }) ?? -1;
  const wanted = worst.margin < 0 ? 0 : definition.near;
  const less = leastPassing(1, now - 1, (by) => marginAt(now - by) >= wanted);
  if (less === null) return [];
  const to = now - less;
  return [{ cure: { kind: 'setting', to: to / settingSteps }, expected: marginAt(to) }];
}

/** Less lean than this tips nothing, rad: a tenth of a millimetre under one rail in H0. */
const flattest = 0.006;

/** What tips a vehicle in a curve: its speed, the lean of the track, its couplings. */
export const explainOverturning: Explainer = {
  causes(situation) {
    const { context, worst } = situation;
    const { run, path } = context;
    const speed = Math.abs(run.speed[worst.frame * run.vehicles + worst.subject]);
    const { cant } = trackPoint(path.track, worst.chainage);
    return [
      ...vehicleCurve(situation),
      ...(speed > 0 ? [{ kind: 'speed', speed } as const] : []),
      ...(Math.abs(cant) > flattest ? [{ kind: 'cant', cant } as const] : []),
    ];
  },
  cures: (situation) => bestCures(situation, slower(situation)),
};
