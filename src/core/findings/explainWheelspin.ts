import { engineWeight, fewerVehicles, settingFor } from './enginePull.ts';
import { bestCures, type Candidate, type Explainer } from './explainer.ts';
import { curveCause, gradeCause } from './gradeUnder.ts';
import type { Situation } from './situation.ts';

/** Share of the grip a gentler setting may ask for; less than this share of a force going to the load, the hand is to blame. */
const gentle = 0.95;

/**
 * What keeps wheels from breaking loose that put `asked` (N) on the rail. Where the load asks for that, more weight on them or less to pull;
 * where the load alone would ask for less, a gentler hand.
 */
export function gripCures({ context, worst }: Situation, asked: number): Candidate[] {
  const { run } = context;
  const width = run.locomotives.length;
  let needed = 0;
  let grip = 0;
  for (let k = 0; k < width; k++) {
    needed += run.demand[worst.frame * width + k];
    grip += run.gripLimit[worst.frame * width + k];
  }
  if (needed >= gentle * Math.min(asked, grip)) {
    return [...engineWeight(context, needed, grip), ...fewerVehicles(context, needed, grip)];
  }
  const to = Math.floor(100 * (settingFor(context, gentle * grip) ?? 0)) / 100;
  return to > 0 ? [{ cure: { kind: 'setting', to }, expected: 1 - gentle }] : [];
}

export const explainWheelspin: Explainer = {
  causes: (situation) => [{ kind: 'grip-limit' }, ...gradeCause(situation), ...curveCause(situation)],
  cures(situation) {
    const { context, worst } = situation;
    const { run } = context;
    const width = run.locomotives.length;
    let asked = worst.governing === 'slip' ? Number.POSITIVE_INFINITY : 0;
    for (let k = 0; k < width; k++) asked += Math.abs(run.railForce[worst.frame * width + k]);
    return bestCures(situation, gripCures(situation, asked));
  },
};
