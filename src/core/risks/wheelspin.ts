import { sayNothing } from './moments/sample.ts';
import { staticGrip } from './pull/staticGrip.ts';
import { briefSlip } from './pull/wheelSlip.ts';
import type { RiskContext, RiskDefinition } from './types.ts';

/**
 * Wheelspin: the force asked at the rim against what the wheels hold before they break loose, N; the margin is what grip is left over as a
 * share of what is asked. It goes on while they spin: then what is asked is the force the rail would carry if they
 * turned with it, and the margin says how far beyond the limit that is. Nothing to say where nothing is asked.
 */
export const wheelspin: RiskDefinition = {
  id: 'wheelspin',
  subject: 'locomotive',
  unit: 'share',
  valueUnit: 'force',
  plenty: 0.5,
  near: 0.1,
  prepare(context) {
    const { run } = context;
    const width = run.locomotives.length;
    const wheels = staticGrip(context);
    const rolling = rollingForce(context);
    return {
      sample(frame, locomotive, out) {
        const at = frame.index * width + locomotive;
        const slipping = wheels.slip[at] > 0;
        const grip = wheels.at(frame.index, locomotive);
        const asked = slipping
          ? Math.max(rolling(frame.index, locomotive), (1 + briefSlip) * grip)
          : Math.min(Math.abs(run.railForce[at]), grip);
        if (!(asked > 0)) return sayNothing(out);
        out.value = asked;
        out.limit = grip;
        out.margin = (grip - asked) / asked;
        out.governing = slipping ? 'slip' : 'grip';
      },
      parts: () => [],
    };
  },
};

/**
 * Force (N) the rail would have to carry if the spinning wheels of locomotive k turned with it. Train, M·a = F - D, and
 * rotor, m·a = T - F, then share one acceleration: F = (T·M + D·m)/(M + m), with T the motor's force at the speed of the
 * train, D what the train asks, M the mass this engine moves, m its rotor as mass at the rim.
 */
function rollingForce({ run, train }: RiskContext): (frame: number, k: number) => number {
  const width = run.locomotives.length;
  const drives = Array.from(run.locomotives, (vehicle) => train.vehicles[vehicle].drive);
  const driven = drives.reduce((sum, drive) => sum + (drive?.drivenMass ?? 0), 0);
  const mass = train.vehicles.reduce((sum, vehicle) => sum + vehicle.mass, 0);
  return (frame, k) => {
    const drive = drives[k];
    if (drive === null || driven === 0) return 0;
    const at = frame * width + k;
    const speed = Math.abs(run.speed[frame * run.vehicles + run.locomotives[k]]);
    const motor = Math.max(drive.stallForce * (Math.abs(run.setting[at]) - speed / drive.freeSpeed), 0);
    const moved = (mass * drive.drivenMass) / driven;
    return (motor * moved + Math.max(run.demand[at], 0) * drive.rotatingMass) / (moved + drive.rotatingMass);
  };
}
