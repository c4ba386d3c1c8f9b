import { cos, sin } from '../math/index.ts';
import { standardGravity } from '../units/index.ts';
import { jointLoads } from './moments/jointLoads.ts';
import { newSample, sayNothing } from './moments/sample.ts';
import type { Comparison, Frame, RiskDefinition, Sample } from './types.ts';
import { leansOrCurves } from './wheels/curvatureAt.ts';
import { newSideForces, sideForces } from './wheels/sideForces.ts';
import { halfSpan } from './wheels/wheelPlay.ts';

/** Less than this share of the limit is rounding of placements. */
const nothing = 1e-9;

/** What is left out of a moment to judge it another way. */
type Without = 'nothing' | 'cant' | 'speed';

/**
 * Overturning about a rail: everything that tips a vehicle as a whole, added up with its sign. The speed outward and the lean of the track at
 * the height of the mass, the couplings, pulled or pushed, at the heights of their heads; against what stands on the rails times half their distance. As a force at the
 * height of the mass, N, and the margin as a share of it. Where pulls and pushes met within one frame each pair of them counts.
 */
export const overturning: RiskDefinition = {
  id: 'overturning',
  subject: 'vehicle',
  unit: 'share',
  valueUnit: 'force',
  plenty: 0.7,
  near: 0.2,
  prepare(context) {
    const { path, train } = context;
    const { vehicles } = train;
    if (!leansOrCurves(path.track)) return null;
    const loads = jointLoads(context);
    const sides = sideForces(context);
    const still = sideForces(context, undefined, 0);
    const forces = newSideForces();

    const judge = (frame: Frame, index: number, without: Without, out: Sample): void => {
      const { massHeight, gauge, front, rear } = vehicles[index];
      const look = without === 'speed' ? still : sides;
      look.look(frame, index);
      const bend = look.frontCurvature(index) + look.rearCurvature(index);
      out.margin = Number.POSITIVE_INFINITY;
      for (let a = 0; a < 2; a++) {
        const pulled = loads.peak(frame.index, index - 1, a === 0);
        if (Number.isNaN(pulled)) continue;
        for (let b = 0; b < 2; b++) {
          const trailed = loads.peak(frame.index, index, b === 0);
          if (Number.isNaN(trailed)) continue;
          look.write(index, pulled, trailed, 0, forces, without === 'cant');
          const couplings = forces.frontEnd * front.coupling.headHeight + forces.rearEnd * rear.coupling.headHeight;
          const tips = couplings / massHeight + forces.frontMass + forces.rearMass;
          const limit = ((forces.frontLoad + forces.rearLoad) * halfSpan(gauge)) / massHeight;
          const margin = 1 - Math.abs(tips) / limit;
          if (margin >= out.margin) continue;
          out.value = Math.abs(tips);
          out.limit = limit;
          out.margin = margin;
          out.governing = bend === 0 ? 'rail' : tips * bend < 0 ? 'outer-rail' : 'inner-rail';
        }
      }
      if (out.value < nothing * out.limit) sayNothing(out);
    };
    const inspected = newSample();
    const without = (what: Without, label: Comparison['label'], frame: Frame, index: number): Comparison => {
      judge(frame, index, what, inspected);
      const { value, limit, margin } = inspected;
      // With nothing left that tips, all of the limit is in hand.
      return Number.isNaN(margin) ? { label, value: 0, limit: 0, margin: 1 } : { label, value, limit, margin };
    };
    return {
      sample: (frame, index, out) => judge(frame, index, 'nothing', out),
      parts: () => [],
      compare: (frame, index) => [
        without('speed', 'at-rest', frame, index),
        ...(path.track.cant === null ? [] : [without('cant', 'without-cant', frame, index)]),
      ],
    };
  },
};

/**
 * Speed (m/s) at which a vehicle on a curve of a radius (m) whose cant (rad) leans it inwards tips over the outer rail by itself: balance of moments about
 * that rail, v² = g·R·(s·cos φ + h·sin φ)/(h·cos φ - s·sin φ), s half the distance of the rails, h the height of the mass. Infinity where no speed does.
 */
export function tippingSpeed(
  { gauge, massHeight }: { readonly gauge: number; readonly massHeight: number },
  radius: number,
  cant = 0,
): number {
  const span = halfSpan(gauge);
  const holds = span * cos(cant) + massHeight * sin(cant);
  const throws = massHeight * cos(cant) - span * sin(cant);
  return throws <= 0 ? Number.POSITIVE_INFINITY : Math.sqrt((standardGravity * radius * holds) / throws);
}
