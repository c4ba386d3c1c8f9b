import { CHAINAGE_ROUNDING } from '../profile/pieces.ts';
import type { PlanElement } from '../types.ts';

/** An element of plan `length`, m, between two curvatures, 1/m, with the kind that they make it. */
export function plainElement(length: number, startCurvature: number, endCurvature: number): PlanElement {
  const kind = startCurvature !== endCurvature ? 'transition' : startCurvature === 0 ? 'straight' : 'arc';
  return { kind, length, startCurvature, endCurvature };
}

/** The same elements run the other way. */
export const reversedElements = (elements: readonly PlanElement[]): PlanElement[] =>
  [...elements].reverse().map((element) => ({
    ...element,
    startCurvature: -element.endCurvature,
    endCurvature: -element.startCurvature,
  }));

/** What lies between the chainages `from` and `to`, m, of a chain of elements: whole ones as they are, the outer ones cut. */
export function elementStretch(elements: readonly PlanElement[], from: number, to: number): PlanElement[] {
  const stretch: PlanElement[] = [];
  let start = 0;
  for (const element of elements) {
    const { length, startCurvature, endCurvature } = element;
    const [first, last] = [Math.max(from - start, 0), Math.min(to - start, length)];
    if (last - first > CHAINAGE_ROUNDING) {
      const curvature = (t: number): number => startCurvature + ((endCurvature - startCurvature) * t) / length;
      stretch.push({
        kind: element.kind,
        length: last - first,
        startCurvature: first === 0 ? startCurvature : curvature(first),
        endCurvature: last === length ? endCurvature : curvature(last),
      });
    }
    start += length;
  }
  return stretch;
}
