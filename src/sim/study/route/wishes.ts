import type { Wish } from '../../../core/study/index.ts';
import type { RouteAim, RouteFound } from './types.ts';

/** What is wished of every aim: ruling grade in per cent, area in m², margin as a share. */
export const wishes = {
  grade: ['least'],
  margin: ['most'],
  front: ['least', 'least', 'most'],
} as const satisfies Readonly<Record<RouteAim, readonly Wish[]>>;

/** Values are told apart to this: a thousandth of a per cent, 10 cm², a thousandth of a margin. Finer ones would make a front of rounding. */
const grains = 1e3;
export const grained = (value: number): number => Math.round(value * grains) / grains;

/** What a route comes to in terms of an aim's wishes. */
export function valuesOf(
  aim: RouteAim,
  { ruling, area, quickMargin }: Pick<RouteFound, 'ruling' | 'area' | 'quickMargin'>,
): number[] {
  const all = { grade: grained(ruling * 100), area: grained(area), margin: grained(quickMargin ?? 0) };
  if (aim === 'grade') return [all.grade];
  return aim === 'margin' ? [all.margin] : [all.grade, all.area, all.margin];
}
