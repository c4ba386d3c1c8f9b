import type { RiskId, Worst } from '../../src/core/risks/types.ts';
import type { Scene } from '../../src/scene/index.ts';
import { type CompiledTrial, compileScene, compileTrial, runTrial, type TrialResult } from '../../src/sim/index.ts';

/** A trial with its result, for tests that ask what became of it. */
export interface Solved extends TrialResult {
  readonly trial: CompiledTrial;
  /** Least margin of a risk, with its value and limit. */
  readonly worst: (risk: RiskId) => Worst;
  /** Least margin of a risk at one joint (from 0), mm; NaN when it never had anything to say. */
  readonly leastAtJoint: (risk: RiskId, joint: number) => number;
  /** Risks that fail, in order of gravity. */
  readonly failing: readonly RiskId[];
}

const known = new WeakMap<Scene, Map<string, Promise<Solved>>>();

/** Solves and judges a trial, once for each scene object however often it is asked for. */
export function solve(scene: Scene, trialId: string): Promise<Solved> {
  const own = known.get(scene) ?? new Map<string, Promise<Solved>>();
  known.set(scene, own);
  const solved = own.get(trialId) ?? solveAnew(scene, trialId);
  own.set(trialId, solved);
  return solved;
}

async function solveAnew(scene: Scene, trialId: string): Promise<Solved> {
  const trial = compileTrial(compileScene(scene), trialId);
  const result = await runTrial(trial);
  const series = (risk: RiskId) => {
    const one = result.risks.find((row) => row.risk === risk);
    if (one === undefined) throw new Error(`${risk} has nothing to say in ${trialId}`);
    return one;
  };
  return {
    ...result,
    trial,
    worst(risk) {
      const { worst } = series(risk);
      if (worst === null) throw new Error(`${risk} has no worst moment in ${trialId}`);
      return worst;
    },
    leastAtJoint(risk, joint) {
      const { margins, subjects } = series(risk);
      let least = Number.NaN;
      for (let i = joint; i < margins.length; i += subjects)
        if (!(margins[i] >= least)) least = Number.isNaN(margins[i]) ? least : margins[i];
      return least * 1000;
    },
    failing: [...new Set(result.findings.flatMap((finding) => (finding.verdict === 'fails' ? finding.risk : [])))],
  };
}

/** Grams-force of a newton. */
export const gramsForce = (newtons: number): number => newtons / 9.80665e-3;

/** Time that a test with several runs may take on a busy machine, ms. */
export const patience = 120_000;
