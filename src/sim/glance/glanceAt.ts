import { leastMargins, riskById, usualLooking } from '../../core/risks/index.ts';
import { compileScene } from '../compileScene.ts';
import { compileTrial } from '../compileTrial.ts';
import { riskContext } from '../runTrial.ts';
import { steadyPass } from '../study/measureTrial.ts';
import type { Glance, GlanceRequest } from './types.ts';

const everyStation = { stride: 1, hollows: 0 };

/** Judges one trial by the quasi-static pass in a few hundredths of a second, in one go. A railway that cannot be run is an answer, not an error. */
export function glanceAt({ scene, trialId, thorough }: GlanceRequest): Glance {
  try {
    const trial = compileTrial(compileScene(scene), trialId);
    const run = steadyPass(trial);
    const { track, reversed } = trial.path;
    const risks = leastMargins(riskContext(trial, run), thorough ? everyStation : usualLooking)
      .map(({ risk, margin, subject, chainage }) => {
        const { plenty, unit } = riskById(risk);
        return {
          risk,
          margin,
          unit,
          share: margin / plenty,
          chainage: reversed ? track.length - chainage : chainage,
          subject,
        };
      })
      .sort((a, b) => a.share - b.share);
    const passes = run.outcome === 'arrived' && risks.every(({ margin }) => margin >= 0);
    return { ok: true, measure: { trialId, outcome: run.outcome, passes, risks } };
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, reason: error.message };
    throw error;
  }
}
