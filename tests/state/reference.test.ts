import { beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../src/core/findings/types.ts';
import { riskById } from '../../src/core/risks/index.ts';
import { type CompiledTrial, compileScene, compileTrial, runTrial, type TrialResult } from '../../src/sim/index.ts';
import { referenceOf, referencePlaces, referenceVehicle } from '../../src/state/index.ts';
import { sample, sceneOf } from '../scene/sample.ts';

const solved: { trial: CompiledTrial; result: TrialResult }[] = [];

beforeAll(async () => {
  const [first] = sample.trials;
  for (const ends of [{ towards: 'end' }, { towards: 'start', startMm: 5000, finishMm: 100 }]) {
    const scene = sceneOf({ ...sample, trials: [{ ...first, ...ends }] });
    const trial = compileTrial(compileScene(scene), first.id);
    solved.push({ trial, result: await runTrial(trial) });
  }
}, 60_000);

/** Between rail and plan over a pivot's reach, and half a recorded frame, m. */
const near = 1e-3;

const jointOf = ({ risk, subject }: Finding): number | null => (riskById(risk).subject === 'joint' ? subject : null);

describe('what the playhead rides on', () => {
  it('stands exactly where a chosen finding says, whatever the finding is about and whichever way the train goes', () => {
    const kinds = new Set<string>();
    for (const { trial, result } of solved) {
      result.findings.forEach((finding, chosenFinding) => {
        const reference = referenceOf({ trial, result, chosenFinding, chosenJoint: jointOf(finding) });
        const places = referencePlaces(trial, result, reference);
        expect(Math.abs(places[finding.frame] - finding.chainage), finding.risk).toBeLessThan(near);
        kinds.add(riskById(finding.risk).subject);
      });
    }
    expect([...kinds].sort()).toEqual(['joint', 'locomotive', 'vehicle']);
  });

  it('is a joint that was chosen since, and the middle of the train where nothing was', () => {
    const [{ trial, result }] = solved;
    const chosenFinding = result.findings.findIndex((finding) => jointOf(finding) === null);
    expect(referenceOf({ trial, result, chosenFinding, chosenJoint: 0 })).toEqual({ kind: 'joint', joint: 0 });
    const middle = referenceOf({ trial, result, chosenFinding: null, chosenJoint: null });
    expect(middle).toEqual({ kind: 'middle' });
    const [at] = referencePlaces(trial, result, middle);
    const ends = [result.run.chainage[0], result.run.chainage[result.run.vehicles - 1]];
    expect(at).toBeLessThan(ends[0]);
    expect(at).toBeGreaterThan(ends[1]);
    expect(referenceVehicle(result, middle)).toBeLessThan(result.run.vehicles);
  });
});
