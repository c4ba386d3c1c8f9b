import type { CompiledScene } from '../types.ts';
import { bentTurnouts } from './bentTurnouts.ts';
import { foulingPoints } from './foulingPoints.ts';
import { gradeBreaks } from './gradeBreaks.ts';
import { headroom } from './headroom.ts';
import { helixGrades } from './helixGrades.ts';
import { longestVehicles } from './longestVehicles.ts';
import { missingEasements } from './missingEasements.ts';
import { reverseCurves } from './reverseCurves.ts';
import type { Advice, AdviceWeight } from './types.ts';

const order: readonly AdviceWeight[] = ['wrong', 'near', 'note'];

/**
 * What can be said of a railway from its drawing alone, before any train runs: facts with place, number and limit, the gravest first and then along
 * the tracks. Geometry only; a trial proves what these foretell.
 */
export function adviceOf(compiled: CompiledScene): readonly Advice[] {
  const facts: Advice[] = [
    ...reverseCurves(compiled),
    ...longestVehicles(compiled),
    ...headroom(compiled),
    ...gradeBreaks(compiled),
    ...bentTurnouts(compiled),
    ...missingEasements(compiled),
    ...helixGrades(compiled),
    ...foulingPoints(compiled),
  ];
  const ids = [...compiled.tracks.keys()];
  return facts.sort(
    (a, b) =>
      order.indexOf(a.weight) - order.indexOf(b.weight) ||
      ids.indexOf(a.trackId) - ids.indexOf(b.trackId) ||
      a.chainage - b.chainage,
  );
}
