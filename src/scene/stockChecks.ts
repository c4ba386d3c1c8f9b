import type { Problem } from './problems.ts';
import { unknownId } from './references.ts';
import type { Scene } from './schema.ts';
import type { SceneVehicle } from './stockSchema.ts';
import { vehicleOf } from './vehicles.ts';

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
