import { useMemo } from 'react';
import type { CompiledTrial } from '../../../state/types.ts';
import { drawnRoute } from '../../band/frame/routeDrawing.ts';
import { useSession } from '../../context.tsx';
import { Fact } from '../../controls/Fact.tsx';
import { gradeShown, radiusShown, useShow } from '../../show.ts';
import { routeFacts } from '../route/routeFacts.ts';

/** The two numbers of the route that decide most: its steepest grade as planned and its tightest curve. */
export function TrialFacts({ trial }: { readonly trial: CompiledTrial }) {
  const show = useShow();
  const { track: way, legs } = trial.path;
  const own = useSession((state) => state.compiled?.tracks.get(trial.trackId));
  const track = useMemo(() => (legs ? drawnRoute(way, legs) : own), [way, legs, own]);
  const facts = useMemo(() => track && routeFacts(track), [track]);
  if (!facts) return null;
  const radius = facts.leastRadius === null ? null : radiusShown(facts.leastRadius, show);
  const grade = gradeShown(Math.abs(facts.steepest), show);
  return (
    <>
      <Fact name="Steepest grade planned" shown={grade.shown} others={grade.other} />
      {radius && <Fact name="Tightest curve" shown={radius.shown} others={radius.other} />}
    </>
  );
}
