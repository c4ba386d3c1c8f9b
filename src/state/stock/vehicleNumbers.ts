import type { Drive, Vehicle } from '../../core/stock/types.ts';
import { type Scene, type SceneVehicle, vehicleOf } from '../../scene/index.ts';
import { readNumbers } from './readNumbers.ts';
import type { NumberRow, StockNumber } from './types.ts';

const perMm = 1e3;
const perGram = 1e3;

/** A heading with the numbers under it. */
export interface NumberGroup {
  readonly name: string;
  readonly numbers: readonly StockNumber[];
}

const row = (field: string, label: string, step: number, of: (vehicle: Vehicle) => number): NumberRow<Vehicle> => ({
  field,
  label,
  step,
  of,
});

const driven = (field: string, label: string, step: number, of: (drive: Drive) => number): NumberRow<Vehicle> =>
  row(`drive/${field}`, label, step, ({ drive }) => (drive === null ? Number.NaN : of(drive)));

const buffered = (field: string, label: string, of: 'spacing' | 'height' | 'headWidth' | 'headHeight' | 'length') =>
  row(
    `buffers/${field}`,
    label,
    0.1,
    ({ front, rear }) => ((front.buffers ?? rear.buffers)?.[of] ?? Number.NaN) * perMm,
  );

const faces = ({ front, rear }: Vehicle): number => (front.buffers?.length ?? 0) + (rear.buffers?.length ?? 0);

/** A vehicle with buffers by its length over them, as a rule lies on it and as makers give it, however the file has it. */
function overBuffers(scene: Scene, file: SceneVehicle): SceneVehicle {
  const { lengthMm, ...rest } = file;
  if (lengthMm === undefined || file.buffers === undefined) return file;
  return { ...rest, overBuffersMm: Math.round((lengthMm + faces(vehicleOf(scene, file)) * perMm) * 1e6) / 1e6 };
}

/** The numbers of a kind of vehicle under headings, those first that people know of their stock. */
export function vehicleNumbers(scene: Scene, file: SceneVehicle): readonly NumberGroup[] {
  const solve = (one: SceneVehicle) => vehicleOf(scene, one);
  const told = overBuffers(scene, file);
  const group = (name: string, rows: readonly NumberRow<Vehicle>[]): NumberGroup => ({
    name,
    numbers: readNumbers('stock', told, rows, solve),
  });
  return [
    group('Size and weight', [
      row('massG', 'Mass', 1, ({ mass }) => mass * perGram),
      told.lengthMm === undefined
        ? row('overBuffersMm', 'Over buffers', 1, (vehicle) => (vehicle.bodyLength + faces(vehicle)) * perMm)
        : row('lengthMm', 'Body', 1, ({ bodyLength }) => bodyLength * perMm),
      ...(file.bogies === undefined
        ? [
            row('wheelbaseMm', 'Wheelbase', 1, ({ pivotSpacing }) => pivotSpacing * perMm),
            row(
              'axles',
              'Axles',
              1,
              ({ axles, kind }) => axles ?? (kind === 'locomotive' || kind === 'tender' ? 3 : 2),
            ),
          ]
        : [
            row('bogies/centresMm', 'Bogie centres', 1, ({ pivotSpacing }) => pivotSpacing * perMm),
            row('bogies/wheelbaseMm', 'Bogie wheelbase', 1, ({ rigidWheelbase }) => rigidWheelbase * perMm),
            row('bogies/axles', 'Axles of a bogie', 1, ({ bogieAxles }) => bogieAxles ?? 2),
          ]),
      row('frontOverhangMm', 'Front overhang', 1, ({ frontOverhang }) => frontOverhang * perMm),
      row('widthMm', 'Width', 0.5, ({ bodyWidth }) => bodyWidth * perMm),
      row('heightMm', 'Height', 0.5, ({ bodyHeight }) => bodyHeight * perMm),
      row('undersideMm', 'Lowest part', 0.1, ({ underside }) => underside * perMm),
      row('massHeightMm', 'Weight sits at', 0.5, ({ massHeight }) => massHeight * perMm),
      row('wheelDiameterMm', 'Wheels', 0.1, ({ wheelRadius }) => 2 * wheelRadius * perMm),
      row('rollingPercent', 'Rolling drag', 0.1, ({ rolling }) => rolling.coulomb * 100),
    ]),
    ...(file.drive === undefined
      ? []
      : [
          group('Motor and grip', [
            driven('stallForceN', 'Pull at a stand', 0.05, ({ stallForce }) => stallForce),
            driven('freeSpeedMmPerS', 'Light, full setting', 10, ({ freeSpeed }) => freeSpeed * perMm),
            driven('adhesion', 'Grip', 0.01, ({ adhesion }) => adhesion),
            driven('drivenMassG', 'On driven wheels', 1, ({ drivenMass }) => drivenMass * perGram),
            driven('rotatingMassG', 'Flywheel, as mass', 10, ({ rotatingMass }) => rotatingMass * perGram),
            driven('drawbarHeightMm', 'Drawbar at', 0.1, ({ drawbarHeight }) => drawbarHeight * perMm),
          ]),
        ]),
    ...(file.buffers === undefined
      ? []
      : [
          group('Buffers', [
            buffered('spacingMm', 'Apart', 'spacing'),
            buffered('heightMm', 'Height', 'height'),
            buffered('headWidthMm', 'Head width', 'headWidth'),
            buffered('headHeightMm', 'Head height', 'headHeight'),
            buffered('lengthMm', 'Beyond the body', 'length'),
          ]),
        ]),
  ];
}
