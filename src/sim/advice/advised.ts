import { type Scene, setProfilePoint } from '../../scene/index.ts';
import { easedJoins } from './easeEdit.ts';
import { withRadius } from './longestVehicles.ts';
import { withStraight } from './reverseCurves.ts';
import type { AdviceEdit } from './types.ts';

/** The scene with an advice's edit of a track. Throws RangeError in words where the scene has become another since. */
export function advised(scene: Scene, trackId: string, edit: AdviceEdit): Scene {
  switch (edit.kind) {
    case 'ease':
      return easedJoins(scene, trackId, edit.joins);
    case 'straight-between':
      return withStraight(scene, trackId, edit.element, edit.lengthMm);
    case 'radius':
      return withRadius(scene, trackId, edit.element, edit.radiusMm);
    case 'vertical-curve':
      return setProfilePoint(scene, trackId, edit.point, { verticalCurveLengthMm: edit.lengthMm });
    case 'grade-point':
      return setProfilePoint(scene, trackId, edit.point, { atMm: edit.atMm });
  }
}
