import { hypot } from '../math/index.ts';
import { standardGravity } from '../units/index.ts';
import { sayNothing } from './moments/sample.ts';
import { orderedSettings } from './pull/orderedSetting.ts';
import { staticGrip } from './pull/staticGrip.ts';
import type { Frame, Governing, RiskContext, RiskDefinition, ValuePart } from './types.ts';

/**
 * Stalling: what the train needs to keep moving against what its engines can give, N; the margin is what is left over as a share of
 * the need. Engines share the load through the train, so all are counted together and every engine's row says
 * the same. A motor gives most at standstill: a train that needs less than that slows down and goes on, one that
 * needs more comes to rest. Wheels count by what they hold before they break loose, also while they spin: what sliding
 * ones still give says how the spin goes, not how much the train is short of. Nothing to say where nothing is needed, or
 * where the controller is being turned to nought.
 */
export const stall: RiskDefinition = {
  id: 'stall',
  subject: 'locomotive',
  unit: 'share',
  valueUnit: 'force',
  plenty: 0.5,
  near: 0.1,
  prepare(context) {
    const pull = pullOf(context);
    return {
      sample(frame, _locomotive, out) {
        pull.at(frame.index);
        if (!(pull.needed > 0) || pull.way === 0) return sayNothing(out);
        out.value = pull.needed;
        out.limit = pull.available;
        out.margin = (pull.available - pull.needed) / pull.needed;
        out.governing = pull.limitedBy;
      },
      parts: (frame) => demandParts(context, frame, pull),
    };
  },
};

/** What the need is made of, N: the weight on the grade, rolling, and curves with their flanges for the rest. */
function demandParts({ run, train }: RiskContext, frame: Frame, pull: Pull): ValuePart[] {
  pull.at(frame.index);
  let grade = 0;
  let rolling = 0;
  train.vehicles.forEach((vehicle, i) => {
    const weight = vehicle.mass * standardGravity;
    const { ahead } = frame.placements[i];
    const speed = Math.abs(run.speed[frame.index * run.vehicles + i]);
    grade += pull.way * weight * ahead[2];
    rolling += weight * hypot(ahead[0], ahead[1]) * (vehicle.rolling.coulomb + vehicle.rolling.perSpeed * speed);
  });
  return [
    { label: 'grade', value: grade },
    { label: 'rolling', value: rolling },
    { label: 'curve', value: pull.needed - grade - rolling },
  ];
}

export interface Pull {
  /** N */
  needed: number;
  available: number;
  /** Which way the engines are ordered to move along the path, 1 or -1; 0 when none is. */
  way: number;
  /** What holds back the larger part of the available force. */
  limitedBy: Governing;
  at(frame: number): void;
}

/** Force needed and available of all engines together at a frame of the run, N. */
export function pullOf(context: RiskContext): Pull {
  const { run, train } = context;
  const width = run.locomotives.length;
  const settings = orderedSettings(run);
  const wheels = staticGrip(context);
  const stallForce = Float64Array.from(run.locomotives, (vehicle) => train.vehicles[vehicle].drive?.stallForce ?? 0);
  const pull: Pull = {
    needed: 0,
    available: 0,
    way: 0,
    limitedBy: 'motor',
    at(frame) {
      let byMotor = 0;
      let byGrip = 0;
      pull.needed = 0;
      pull.way = 0;
      for (let k = 0; k < width; k++) {
        const at = frame * width + k;
        const held = settings[at] === run.setting[at];
        const motor = held ? run.motorLimit[at] : stallForce[k] * Math.abs(settings[at]);
        const grip = wheels.at(frame, k);
        pull.needed += run.demand[at];
        if (settings[at] !== 0) pull.way = Math.sign(settings[at]);
        if (motor <= grip) byMotor += motor;
        else byGrip += grip;
      }
      pull.available = byMotor + byGrip;
      pull.limitedBy = byMotor >= byGrip ? 'motor' : 'grip';
    },
  };
  return pull;
}
