import type { Coupling } from '../../core/stock/types.ts';
import { type Scene, type SceneCoupling, type SceneVehicle, vehicleOf } from '../../scene/index.ts';
import { readNumbers } from './readNumbers.ts';
import type { NumberRow, StockNumber } from './types.ts';

const perMm = 1e3;
const perDegree = 180 / Math.PI;

const row = (field: string, label: string, step: number, of: (coupling: Coupling) => number): NumberRow<Coupling> => ({
  field,
  label,
  step,
  of,
});

const rows: readonly NumberRow<Coupling>[] = [
  row('headHeightMm', 'Head above rail', 0.1, ({ headHeight }) => headHeight * perMm),
  row('headHeightToleranceMm', 'Off by up to', 0.1, ({ headHeightTolerance }) => headHeightTolerance * perMm),
  row('facingHeightMm', 'Face, high', 0.1, ({ facingHeight }) => facingHeight * perMm),
  row('engagementMm', 'Hold when pulled', 0.1, ({ engagement }) => engagement * perMm),
  row('reachMm', 'Pivot to face', 0.5, ({ reach }) => reach * perMm),
  row('pivotInsetMm', 'Pivot inside body', 0.5, ({ pivotInset }) => pivotInset * perMm),
  row('freeSwingDeg', 'Free swing', 0.5, ({ freeSwing }) => freeSwing * perDegree),
  row('slackMm', 'Slack', 0.1, ({ slack }) => slack * perMm),
  row('draftStiffnessNPerMm', 'Stiffness pulled', 0.1, ({ draftStiffness }) => draftStiffness / perMm),
  row('buffStiffnessNPerMm', 'Stiffness pushed', 0.1, ({ buffStiffness }) => buffStiffness / perMm),
  row('faceTiltDeg', 'Face leans', 0.5, ({ faceTilt }) => faceTilt * perDegree),
  row('faceFriction', 'Friction of faces', 0.01, ({ faceFriction }) => faceFriction),
];

/** The numbers of a coupling, as a vehicle of the scene's gauge would have it. */
export function couplingNumbers(scene: Scene, file: SceneCoupling): readonly StockNumber[] {
  const solve = (one: SceneCoupling) =>
    vehicleOf({ ...scene, couplings: [one] }, { ...bearer, coupling: one.id }).front.coupling;
  return readNumbers('couplings', file, rows, solve);
}

/** Any vehicle bears a coupling alike. */
const bearer: SceneVehicle = { id: 'bearer', name: 'Bearer', kind: 'wagon', lengthMm: 100, wheelbaseMm: 50 };
