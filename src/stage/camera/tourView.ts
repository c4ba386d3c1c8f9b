import type { Vec3 } from '../../core/math/vec3.ts';
import type { SceneTourView } from '../../state/show/index.ts';
import { eyeOf, type Look, lookBetween } from './look.ts';
import type { CameraRig } from './rig.ts';
import { fields } from './viewpoints.ts';

/** What a view of a tour is found by, beside what it says itself. */
export interface ViewSights {
  /** The whole railway. */
  first(): Look;
  /** Near by what the lens is on, coming from another look; null while there is nothing. */
  atLens(from: Look): Look | null;
}

const deg = Math.PI / 180;

/** The look of a view that is walked or followed to; null: its camera finds it by itself. */
export function lookOfView(view: SceneTourView, sights: ViewSights, from: Look): Look | null {
  switch (view.kind) {
    case 'whole':
      return sights.first();
    case 'place':
      return lookBetween(metres(view.eye), metres(view.target), (view.fieldDeg ?? fields.walk / deg) * deg);
    case 'lens':
      return sights.atLens(from);
    case 'follow':
      return {
        ...from,
        azimuth: view.fromDeg === undefined ? from.azimuth : view.fromDeg * deg,
        elevation: view.aboveDeg === undefined ? Math.min(from.elevation, 35 * deg) : view.aboveDeg * deg,
        height: view.pictureMm === undefined ? from.height : view.pictureMm / 1000,
        field: fields.walk,
      };
    default:
      return null;
  }
}

/** What a rig shows now as a view of a tour; `joint` is the number of the one that is chosen. */
export function viewOfRig({ mode, look, touched }: CameraRig, whole: Look, joint: number | null): SceneTourView {
  const onJoint = joint === null ? {} : { joint };
  switch (mode) {
    case 'down':
      return { kind: 'down' };
    case 'ride':
      return { kind: 'ride', ...onJoint };
    case 'follow':
      return {
        kind: 'follow',
        ...onJoint,
        fromDeg: tenth(Math.atan2(Math.sin(look.azimuth), Math.cos(look.azimuth)) / deg),
        aboveDeg: tenth(look.elevation / deg),
        pictureMm: Math.max(1, Math.round(look.height * 1000)),
      };
    default: {
      if (mode === 'walk' && !touched && sameLook(look, whole)) return { kind: 'whole' };
      const fieldDeg = tenth(look.field / deg);
      return {
        kind: 'place',
        eye: millimetres(eyeOf(look)),
        target: millimetres(look.target),
        ...(Math.abs(fieldDeg - fields.walk / deg) > 0.05 && { fieldDeg }),
      };
    }
  }
}

const sameLook = (a: Look, b: Look): boolean =>
  Math.abs(a.height - b.height) < 1e-3 * b.height && Math.hypot(...eyeOf(a).map((x, i) => x - eyeOf(b)[i])) < 1e-3;

const tenth = (value: number): number => Math.round(value * 10) / 10;

type PlaceMm = Extract<SceneTourView, { kind: 'place' }>['eye'];

const metres = ({ xMm, yMm, heightMm }: PlaceMm): Vec3 => [xMm / 1000, yMm / 1000, heightMm / 1000];

const millimetres = ([x, y, z]: Vec3): PlaceMm => ({
  xMm: Math.round(x * 1000),
  yMm: Math.round(y * 1000),
  heightMm: Math.round(z * 1000),
});
