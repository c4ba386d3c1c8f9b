import { solveTridiagonal } from '../../math/index.ts';
import type { PieceWriter } from '../profile/pieces.ts';
import type { StripLoad, StripSection } from '../types.ts';
import { type SpanLoads, spanLoads } from './beamLoads.ts';

/** A point of a beam: a support with its height given, or a hinge between supports with its moment known to be 0. */
export interface BeamNode {
  readonly chainage: number;
  /** Of a support, m; of a hinge unknown. */
  readonly height: number;
  readonly hinge: boolean;
  /** How much higher the beam goes on after a hinge, m. */
  readonly step: number;
}

/** A strip between two supports at which it is parted or ends. */
export interface Beam {
  readonly nodes: readonly BeamNode[];
  readonly clampedStart: boolean;
  readonly clampedEnd: boolean;
}

/**
 * Solves one beam and writes its pieces. The unknown of a support is its moment over the first section's stiffness (0 at
 * free ends), of a hinge its height; the equation of a support says that the slope is continuous, of a hinge that the
 * shear is, of a clamped end that the slope is 0: the three-moment equation (Clapeyron) with sinking supports. Each
 * touches only its neighbours. Loads enter by the end slopes and end shears of each span as if simply supported.
 */
export function writeBeam(
  beam: Beam,
  sections: readonly StripSection[],
  loads: readonly StripLoad[],
  creep: number,
  writer: PieceWriter,
): void {
  const { nodes, clampedStart, clampedEnd } = beam;
  const n = nodes.length;
  const spans = nodes.slice(1).map((to, i) => spanLoads(nodes[i].chainage, to.chainage, sections, loads, creep));
  const lower = new Float64Array(n);
  const diagonal = new Float64Array(n).fill(1);
  const upper = new Float64Array(n);
  const right = new Float64Array(n);
  for (let i = 1; i + 1 < n; i++) {
    const [before, node, after] = [nodes[i - 1], nodes[i], nodes[i + 1]];
    const [past, next] = [spans[i - 1], spans[i]];
    const left = node.chainage - before.chainage;
    const ahead = after.chainage - node.chainage;
    if (node.hinge) {
      diagonal[i] = 0;
      lower[i] = before.hinge ? 0 : 1 / left;
      upper[i] = after.hinge ? 0 : 1 / ahead;
      right[i] = past.endShear - next.startShear;
    } else {
      diagonal[i] = (left * past.softness + ahead * next.softness) / 3;
      right[i] = next.startSlope - past.endSlope - node.height * (1 / left + 1 / ahead);
      if (before.hinge) {
        lower[i] = -1 / left;
        right[i] += before.step / left;
      } else {
        lower[i] = (left * past.softness) / 6;
        right[i] += before.height / left;
      }
      if (after.hinge) upper[i] = -1 / ahead;
      else {
        upper[i] = (ahead * next.softness) / 6;
        right[i] += after.height / ahead;
      }
    }
  }
  if (clampedStart) {
    const [node, after] = nodes;
    const span = after.chainage - node.chainage;
    diagonal[0] = (span * spans[0].softness) / 3;
    upper[0] = after.hinge ? -1 / span : (span * spans[0].softness) / 6;
    right[0] = spans[0].startSlope - node.height / span + (after.hinge ? 0 : after.height / span);
  }
  if (clampedEnd) {
    const [before, node] = nodes.slice(-2);
    const span = node.chainage - before.chainage;
    const last = spans[n - 2];
    diagonal[n - 1] = (span * last.softness) / 3;
    lower[n - 1] = before.hinge ? -1 / span : (span * last.softness) / 6;
    right[n - 1] = -last.endSlope - node.height / span + (before.hinge ? before.step : before.height) / span;
  }
  const unknown = solveTridiagonal(lower, diagonal, upper, right);
  const height = nodes.map((node, i) => (node.hinge ? unknown[i] : node.height));
  const moment = nodes.map((node, i) => (node.hinge ? 0 : unknown[i]));
  // The straight run-off of the beam before this one ends where this one starts.
  if (!writer.isEmpty) writer.dropLast();
  for (let i = 0; i + 1 < n; i++) {
    const span = nodes[i + 1].chainage - nodes[i].chainage;
    const from = height[i] + nodes[i].step;
    const rise = (height[i + 1] - from) / span;
    const [m0, m1] = [moment[i] * spans[i].softness, moment[i + 1] * spans[i].softness];
    const slope = rise - (span * (2 * m0 + m1)) / 6;
    if (writer.isEmpty) writer.add(nodes[0].chainage, height[0], slope + spans[0].startSlope);
    writeSpan(writer, nodes[i].chainage, [from, slope, m0 / 2, (m1 - m0) / (6 * span)], spans[i]);
    if (i + 2 === n) {
      const leaving = rise + (span * (m0 + 2 * m1)) / 6 + spans[i].endSlope;
      writer.add(nodes[n - 1].chainage, height[n - 1], leaving);
    }
  }
}

/** Writes one span: the cubic of its end moments with what its loads add, cut at every point load. */
function writeSpan(
  writer: PieceWriter,
  start: number,
  [a0, b0, c0, d0]: readonly [number, number, number, number],
  { length, sag, points, startSlope, pointShear }: SpanLoads,
): void {
  let [a, b, c] = [a0, b0 + startSlope, c0];
  let d = d0 + (sag * length) / 12 + pointShear / 6;
  const e = -sag / 24;
  let at = 0;
  for (const point of points) {
    const t = point.at - at;
    if (t > 0) {
      writer.add(start + at, a, b, c, d, e);
      a += t * (b + t * (c + t * (d + t * e)));
      b += t * (2 * c + t * (3 * d + t * 4 * e));
      c += t * (3 * d + t * 6 * e);
      d += t * 4 * e;
      at = point.at;
    }
    d -= point.press / 6;
  }
  if (at < length) writer.add(start + at, a, b, c, d, e);
}
