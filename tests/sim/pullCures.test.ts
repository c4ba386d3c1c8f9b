import { describe, expect, it } from 'vitest';
import type { Cure } from '../../src/core/findings/types.ts';
import type { RiskId } from '../../src/core/risks/types.ts';
import type { Scene } from '../../src/scene/index.ts';
import { applyCure } from '../../src/sim/index.ts';
import { bundledFiles, bundledScene } from '../scene/sample.ts';
import { patience, type Solved, solve } from './solved.ts';

/** The quasi-static pass that cures are sized by agrees with the full run within this, as a share of the pull. */
const agree = 0.01;

/** What the cures are to leave in hand: twice that. */
const reserve = 2 * agree;

const pullRisks: readonly RiskId[] = ['stall', 'wheelspin'];

async function tried(scene: Scene, trialId: string, cure: Cure): Promise<Solved> {
  const changed = applyCure(scene, trialId, cure);
  if (changed === null) throw new Error(`${cure.kind} does not apply to ${trialId}`);
  return solve(changed, trialId);
}

/** Least of pull and grip in hand. */
const inHand = (solved: Solved): number => Math.min(...pullRisks.map((risk) => solved.worst(risk).margin));

/** The same cure with a step less of it; null where that is none. */
function oneLess(cure: Cure): Cure | null {
  if (cure.kind === 'fewer-vehicles') return cure.by > 1 ? { ...cure, by: cure.by - 1 } : null;
  if (cure.kind === 'add-engine-weight') return { ...cure, by: cure.by - 0.005 };
  return null;
}

/** Every cure of a stall or a spin of a trial, once each, with the risk it is for. */
function pullCures({ findings }: Solved): [RiskId, Cure][] {
  const cures = findings
    .filter(({ risk, verdict }) => verdict === 'fails' && pullRisks.includes(risk))
    .flatMap(({ risk, cures }) => cures.map((cure): [RiskId, Cure] => [risk, cure]));
  return [...new Map(cures.map((entry) => [JSON.stringify(entry[1]), entry])).values()];
}

const bundled = bundledFiles.flatMap((file) => {
  const scene = bundledScene(file);
  return scene.trials.map(({ id }) => ({ file, scene, id }));
});

describe.each(bundled)('$file $id', ({ scene, id }) => {
  it(
    'if it stalls or spins, has a cure that is enough, with which the full run arrives, and asks for no more than it takes',
    async () => {
      const solved = await solve(scene, id);
      if (!solved.failing.some((risk) => pullRisks.includes(risk))) return;
      const cures = pullCures(solved);
      expect(cures.some(([, { enough }]) => enough !== false)).toBe(true);
      for (const [risk, cure] of cures) {
        const after = await tried(scene, id, cure);
        if (cure.enough === false) {
          expect(after.worst(risk).margin, cure.kind).toBeLessThan(0);
          continue;
        }
        expect(after.run.outcome, cure.kind).toBe('arrived');
        expect(inHand(after), cure.kind).toBeGreaterThanOrEqual(0);
        const less = oneLess(cure);
        // One vehicle or 5 g less leaves less than the cure is to leave.
        if (less !== null) expect(inHand(await tried(scene, id, less)), cure.kind).toBeLessThan(reserve + agree);
      }
    },
    patience,
  );
});

it(
  'has five trials of a bundled scene that stall to try that on',
  async () => {
    const scene = bundledScene('02-marlow-fold.json');
    const outcomes = await Promise.all(scene.trials.map(async ({ id }) => (await solve(scene, id)).run.outcome));
    expect(outcomes.filter((outcome) => outcome === 'stalled').length).toBeGreaterThanOrEqual(5);
  },
  patience,
);
