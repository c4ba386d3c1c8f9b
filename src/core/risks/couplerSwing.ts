import { jointLoads } from './moments/jointLoads.ts';
import { sayNothing, saySpare } from './moments/sample.ts';
import type { RiskDefinition } from './types.ts';

const degree = Math.PI / 180;

/**
 * Swing of a coupling's shank against what its pocket allows, rad: of a joint's two halves the one with less left. Past
 * its free swing the body takes the couple and the sideways load on the rail jumps. It matters pulled and pushed.
 */
export const couplerSwing: RiskDefinition = {
  id: 'coupler-swing',
  subject: 'joint',
  unit: 'angle',
  plenty: 10 * degree,
  near: 2 * degree,
  prepare(context) {
    const { vehicles } = context.train;
    const loads = jointLoads(context);
    const leadingFree = Float64Array.from(vehicles.slice(0, -1), (vehicle) => vehicle.rear.coupling.freeSwing);
    const trailingFree = Float64Array.from(vehicles.slice(1), (vehicle) => vehicle.front.coupling.freeSwing);
    if (![...leadingFree, ...trailingFree].some(Number.isFinite)) return null;
    return {
      sample(frame, joint, out) {
        const { swingLeading, swingTrailing } = frame.joints[joint];
        const spareLeading = leadingFree[joint] - Math.abs(swingLeading);
        const spareTrailing = trailingFree[joint] - Math.abs(swingTrailing);
        const stops = Math.min(spareLeading, spareTrailing) < Number.POSITIVE_INFINITY;
        if (!stops || !loads.coupled(frame.index, joint)) {
          sayNothing(out);
        } else if (spareLeading <= spareTrailing) {
          saySpare(out, Math.abs(swingLeading), leadingFree[joint], 'swing');
        } else {
          saySpare(out, Math.abs(swingTrailing), trailingFree[joint], 'swing');
        }
      },
      parts: () => [],
    };
  },
};
