import { steadyRun, trainLength } from '../../dynamics/index.ts';
import { arc, makeTrack, straight } from '../../track/index.ts';
import type { Situation, Trial } from '../situation.ts';
import type { Reach } from '../types.ts';
import { curveCause } from './gradeUnder.ts';
import { droppable } from './loads.ts';
import { type RoutePull, routePull } from './routePull.ts';
import { greatestPassing } from './search.ts';
import { withVehicles } from './steadyTrial.ts';

/**
 * Pull a train must have in hand by the quasi-static pass to be counted as getting over, as a share: the pass and the full run agree within 1 %,
 * and the run surges a little besides.
 */
export const reserve = 0.02;

/** More vehicles than this nobody counts. */
export const mostVehicles = 50;

/** Grades are told in steps of a tenth of a per cent, and no further than this many: 15 %, where nothing runs by adhesion. */
const gradeStep = 0.001;
const gradeSteps = 150;

/** Way over which the even grade is tried, and its nodes, m: every place of it is alike. */
const triedWay = 0.1;
const node = 0.05;

/** What the train of a stall finding can do; null where its script is not known. */
export function reachOf(situation: Situation): Reach | null {
  const { trial } = situation;
  const now = routePull(trial, {});
  if (now === null) return null;
  return {
    chainage: trial.otherWay(now.chainage),
    needed: now.needed,
    available: now.available,
    vehicles: mostThatPass(trial),
    grade: steepestGrade(situation),
  };
}

/** Whether a train gets over its route with `wanted` in hand, as a share, by motor and by grip. */
export const getsOver = ({ stall, spin }: RoutePull, wanted: number): boolean => stall >= wanted && spin >= wanted;

/** The most vehicles besides engines and tenders that the engines take over the whole route, or as many as the track holds. */
function mostThatPass(trial: Trial): number {
  const has = droppable(trial.context).length;
  const passes = (count: number): boolean => {
    const change = withVehicles(trial, count);
    const pull = change === null ? null : routePull(trial, change);
    return pull !== null && getsOver(pull, reserve);
  };
  return greatestPassing(has, mostVehicles, passes) ?? 0;
}

/** The steepest even grade this train climbs, all of it in the curve it stands in at the finding, at the script's highest setting; null: none. */
function steepestGrade({ trial, context, frame, ...rest }: Situation): number | null {
  const { driven } = trial;
  if (driven === null) return null;
  const { train } = context;
  const setting = driven.script.orders.reduce((most, order) => Math.max(most, order.setting), 0);
  const [curve] = curveCause({ trial, context, frame, ...rest });
  const start = trainLength(train) + 2 * triedWay;
  const length = start + 3 * triedWay;
  const element =
    curve !== undefined && 'radius' in curve ? arc(curve.radius, length / curve.radius) : straight(length);
  const climbs = (step: number): boolean => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [element],
      profile: {
        points: [
          { chainage: 0, height: 0 },
          { chainage: length, height: step * gradeStep * length },
        ],
      },
    });
    const run = steadyRun(
      {
        path: { track, reversed: false },
        train,
        script: { ...driven.script, start, finish: start + triedWay },
        options: driven.options,
      },
      { every: node, setting },
    );
    let needed = 0;
    let available = 0;
    for (let k = 0; k < run.locomotives.length; k++) {
      needed += run.demand[k];
      available += Math.min(run.motorLimit[k], run.gripLimit[k]);
    }
    return available >= needed;
  };
  const steps = greatestPassing(-1, gradeSteps, climbs);
  return steps === null ? null : steps * gradeStep;
}
