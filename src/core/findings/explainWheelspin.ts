import { engineWeight, fewerVehicles, settingFor } from './enginePull.ts';
import { bestCures, type Candidate, type Explainer } from './explainer.ts';
import { curveCause, gradeCause } from './gradeUnder.ts';
import type { Situation } from './situation.ts';

/** Share of the grip a gentler setting may ask for. */
const gentle = 0.95;

/** What the train needs and what the engines grip at a moment, all together, N. */
function needAndGrip({ context: { run }, worst }: Situation): { needed: number; grip: number } {
  const width = run.locomotives.length;
  let needed = 0;
  let grip = 0;
  for (let k = 0; k < width; k++) {
    needed += run.demand[worst.frame * width + k];
    grip += run.gripLimit[worst.frame * width + k];
  }
  return { needed, grip };
}

/** What keeps wheels from breaking loose: more weight on them, less to pull, or a gentler hand. */
export function gripCures(situation: Situation): Candidate[] {
  const { needed, grip } = needAndGrip(situation);
  const candidates = [
    ...engineWeight(situation.context, needed, grip),
    ...fewerVehicles(situation.context, needed, grip),
  ];
  // Wheels that spin although they could grip what is needed are turned too hard.
  const to = needed < gentle * grip ? settingFor(situation.context, gentle * grip) : null;
  if (to !== null && to >= 0.01) {
    candidates.push({ cure: { kind: 'setting', to: Math.floor(to * 100) / 100 }, expected: 1 - gentle });
  }
  return candidates;
}

export const explainWheelspin: Explainer = {
  causes: (situation) => [{ kind: 'grip-limit' }, ...gradeCause(situation), ...curveCause(situation)],
  cures: (situation) => bestCures(situation, gripCures(situation)),
};
