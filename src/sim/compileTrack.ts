import { arc, helix, makeTrack, straight, transition } from '../core/track/index.ts';
import type { GradePoint, PlanElement, StripSpec, Track } from '../core/track/types.ts';
import {
  elementCurvatures,
  elementLengthMm,
  placedSupports,
  profileHeights,
  type SceneProfilePoint,
  type SceneTrack,
  stripJointsMm,
} from '../scene/index.ts';

const mm = 1e-3;

/** A track of the scene as the exact geometry in SI. Throws RangeError, naming the track, when it cannot be laid. */
export function compileTrack(file: SceneTrack): Track {
  const heights = profileHeights(file);
  const supports = placedSupports(file);
  const strip: StripSpec | null =
    supports.length === 0
      ? null
      : {
          supports: supports.map(({ atMm, offMm }) => ({ chainage: atMm * mm, departure: offMm * mm })),
          hinges: stripJointsMm(file).map((atMm) => atMm * mm),
        };
  try {
    return makeTrack({
      start: {
        x: file.start.xMm * mm,
        y: file.start.yMm * mm,
        heading: (file.start.headingDeg * Math.PI) / 180,
      },
      elements: file.alignment.map((_, index) => planElement(file, index)),
      profile: {
        points: file.profile.map((point, index) => gradePoint(point, heights[index].atMm, heights[index].heightMm)),
        ...(strip === null ? {} : { strip }),
      },
    });
  } catch (error) {
    throw new RangeError(`Track "${file.id}": ${error instanceof Error ? error.message : String(error)}`, {
      cause: error,
    });
  }
}

function planElement(file: SceneTrack, index: number): PlanElement {
  const element = file.alignment[index];
  const length = elementLengthMm(element) * mm;
  switch (element.kind) {
    case 'straight':
      return straight(length);
    case 'transition': {
      const [from, to] = elementCurvatures(file, index);
      return transition(length, from, to);
    }
    case 'arc': {
      const radius = element.radiusMm * mm;
      return arc(radius, (element.turn === 'left' ? length : -length) / radius);
    }
    case 'helix':
      return helix(element.radiusMm * mm, element.turn === 'left' ? element.turns : -element.turns);
  }
}

function gradePoint(point: SceneProfilePoint, atMm: number, heightMm: number): GradePoint {
  const place = { chainage: atMm * mm, height: heightMm * mm };
  if (point.verticalCurveLengthMm !== undefined)
    return { ...place, curve: { length: point.verticalCurveLengthMm * mm } };
  if (point.verticalCurveRadiusMm !== undefined)
    return { ...place, curve: { radius: point.verticalCurveRadiusMm * mm } };
  return place;
}
