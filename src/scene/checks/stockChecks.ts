import type { Vehicle } from '../../core/stock/types.ts';
import { couplingDefaults } from '../defaults.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneVehicle } from '../schema/stockSchema.ts';
import { vehicleOf } from '../vehicles.ts';
import type { Problem } from './problems.ts';
import { unknownId } from './references.ts';

/** Shortest body that is still a vehicle, m. */
const shortestBody = 0.005;

/** What is wrong within one vehicle: unknown couplings, a body shorter than it can be, more weight on drivers than it has. */
export function stockProblems(scene: Scene, file: SceneVehicle, path: string): Problem[] {
  const problems: Problem[] = [];
  const ids = (scene.couplings ?? []).map((coupling) => coupling.id);
  for (const field of ['coupling', 'frontCoupling', 'rearCoupling'] as const) {
    const id = file[field];
    if (id !== undefined && !ids.includes(id)) problems.push(unknownId(`${path}.${field}`, id, ids));
  }
  const vehicle = vehicleOf(scene, file);
  const bodyMm = Math.round(vehicle.bodyLength * 1e5) / 100;
  if (vehicle.bodyLength < shortestBody) {
    problems.push({
      path: `${path}.${file.lengthMm === undefined ? 'overBuffersMm' : 'lengthMm'}`,
      found: `a body of ${bodyMm} mm between its ends`,
      allowed: 'at least 5 mm, after the buffers are taken off',
      example: '246',
    });
  } else if (Math.min(vehicle.frontOverhang, vehicle.rearOverhang) < -vehicle.bodyLength / 2) {
    problems.push({
      path: file.bogies === undefined ? `${path}.wheelbaseMm` : `${path}.bogies.centresMm`,
      found: `running points ${Math.round(vehicle.pivotSpacing * 1e5) / 100} mm apart under a body of ${bodyMm} mm`,
      allowed: 'running points under the body, or not far beyond it',
      example: String(Math.round(bodyMm * 0.7)),
    });
  }
  if (file.axles !== undefined && file.bogies !== undefined) {
    problems.push({
      path: `${path}.axles`,
      found: `${file.axles} axles of a rigid frame on a vehicle with bogies`,
      allowed: 'axles together with wheelbaseMm; bogies count their own',
      example: '"wheelbaseMm": 60',
    });
  }
  const drive = vehicle.drive;
  // A rounding of the two conversions to kilograms must not refuse "all of it".
  if (drive !== null && drive.drivenMass > vehicle.mass * (1 + 1e-9)) {
    problems.push({
      path: `${path}.drive.drivenMassG`,
      found: String(file.drive?.drivenMassG),
      allowed: `at most the mass of the vehicle, ${Math.round(vehicle.mass * 1e5) / 100} g`,
      example: String(Math.round(vehicle.mass * 1e3)),
    });
  }
  problems.push(...axleProblems(file, vehicle, path));
  if (drive !== null && drive.slidingAdhesion > drive.adhesion) {
    problems.push({
      path: `${path}.drive.slidingAdhesion`,
      found: String(drive.slidingAdhesion),
      allowed: `at most the adhesion, ${drive.adhesion}: slipping wheels grip less`,
      example: String(drive.adhesion),
    });
  }
  return problems;
}

/** Two places at least, a driven axle at least, and idle axles exactly where the driven ones do not carry it all. */
function axleProblems(file: SceneVehicle, { mass, drive }: Vehicle, path: string): Problem[] {
  const axles = file.drive?.axles;
  if (axles === undefined || drive === null) return [];
  const at = `${path}.drive.axles`;
  const example = '[{ "aheadMm": 30 }, { "aheadMm": -30 }]';
  const idle = axles.some((axle) => axle.driven === false);
  const rest = mass - drive.drivenMass;
  if (axles.every((axle) => axle.driven === false)) {
    return [{ path: at, found: 'no driven axle', allowed: 'at least one driven axle', example }];
  }
  if (axles.every((axle) => axle.aheadMm === axles[0].aheadMm)) {
    return [{ path: at, found: 'all axles in one place', allowed: 'axles in at least two places', example }];
  }
  // A rounding of the conversions to kilograms is no weight.
  if (idle !== rest > 1e-9 * mass) {
    return [
      {
        path: at,
        found: idle ? 'idle axles that carry nothing' : `${Math.round(rest * 1e5) / 100} g on no axle`,
        allowed: 'idle axles if, and only if, "drivenMassG" is less than the mass',
        example: '"drivenMassG": 170 with an axle that has "driven": false',
      },
    ];
  }
  return [];
}

/** A second stage of a spring is a stop: at least as stiff as what it ends. */
export function couplingProblems(scene: Scene): Problem[] {
  return (scene.couplings ?? []).flatMap((file, index) =>
    (['draft', 'buff'] as const).flatMap((way) => {
      const second = file[`${way}Second`];
      if (second === undefined) return [];
      const first = file[`${way}StiffnessNPerMm`] ?? couplingDefaults[file.kind][`${way}StiffnessNPerMm`].value;
      if (second.stiffnessNPerMm >= first) return [];
      return [
        {
          path: `couplings[${index}].${way}Second.stiffnessNPerMm`,
          found: String(second.stiffnessNPerMm),
          allowed: `at least that of the first stage, ${first} N/mm`,
          example: String(first * 4),
        },
      ];
    }),
  );
}
