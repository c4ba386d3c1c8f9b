import { vehicleCurve } from './curves.ts';
import type { Explainer } from './explainer.ts';

/** Tracks stand too near: only laying them further apart helps, and how far the words say. */
export const explainPassing: Explainer = {
  causes: (situation) => [{ kind: 'track-beside' }, ...vehicleCurve(situation)],
  cures: () => [],
};
