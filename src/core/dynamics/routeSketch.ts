import { atan, hypot, sin } from '../math/index.ts';
import { couplerPivot, guideLengthening, referenceSpacing } from '../stock/index.ts';
import type { Train, Vehicle } from '../stock/types.ts';
import { chainageAtRail, type Track, trackPoint } from '../track/index.ts';
import { curveDragShare } from './curveDrag.ts';
import { betweenFaces, fillTables, type Pair, type RouteTables, VEHICLE_STRIDE } from './routeTables.ts';
import type { ForceModel } from './types.ts';

/**
 * The route's tables in a fraction of the time, for the quasi-static pass.
 *
 * The track is looked at once a node; running points take what lies between two nodes, and a pair of coupled bodies is placed as
 * on the circle that touches the track between them. Both are exact on constant grade and constant curvature; in
 * easements and vertical curves the error is of the order of the node squared, at breaks it spreads them over a node.
 */
export function sketchRoute(
  track: Track,
  train: Train,
  forces: ForceModel,
  from: number,
  to: number,
  node: number,
): RouteTables {
  // Wide enough for the running points of a vehicle, and the middle of a pair, that stands on the first or last node.
  const longest = Math.max(...train.vehicles.map((vehicle) => vehicle.pivotSpacing));
  const margin = Math.ceil(longest / 2 / node) + 1;
  const count = Math.ceil((to - from) / node) + 2 + 2 * margin;
  const sine = new Float64Array(count);
  const cosine = new Float64Array(count);
  const curvature = new Float64Array(count);
  const point = trackPoint(track, 0);
  for (let k = 0; k < count; k++) {
    trackPoint(track, chainageAtRail(track, from + (k - margin) * node), point);
    cosine[k] = 1 / hypot(1, point.grade);
    sine[k] = point.grade * cosine[k]!;
    curvature[k] = point.curvature;
  }
  return fillTables(
    track,
    train,
    forces,
    from,
    to,
    node,
    (vehicle, _, rows) => {
      const { pivotSpacing, massAhead } = vehicle;
      const half = pivotSpacing / 2 / node;
      const between = betweenFaces(vehicle);
      for (let k = 0, row = 0; row < rows.length; k++, row += VEHICLE_STRIDE) {
        const front = k + margin + half;
        const rear = k + margin - half;
        const sineFront = at(sine, front);
        const sineRear = at(sine, rear);
        const bendFront = at(curvature, front);
        const bendRear = at(curvature, rear);
        const level = 0.5 * (at(cosine, front) + at(cosine, rear));
        // A centre of mass ahead of the middle rises as the body pitches.
        rows[row] = 0.5 * (sineFront + sineRear) + (massAhead * (sineFront - sineRear)) / pivotSpacing;
        rows[row + 1] = level;
        // On straight track there is no more to say: drag and sideways share are 0.
        if (bendFront === 0 && bendRear === 0) continue;
        rows[row + 2] =
          0.5 * level * (curveDragShare(vehicle, bendFront, forces) + curveDragShare(vehicle, bendRear, forces));
        rows[row + 3] = Math.abs(sin((between * (bendFront + bendRear)) / 4));
      }
    },
    (pair, out) => {
      // Most nodes have the curvature of their neighbour.
      let bend = Number.NaN;
      let shift = 0;
      for (let k = 0; k < out.length; k++) {
        const here = curvature[k + margin]!;
        if (here !== bend) {
          shift = shiftOnCircle(pair, here);
          bend = here;
        }
        out[k] = shift;
      }
    },
  );
}

/** A column at a place between its nodes. */
function at(column: Float64Array, place: number): number {
  const k = Math.floor(place);
  return column[k]! + (column[k + 1]! - column[k]!) * (place - k);
}

/**
 * Pivot distance of a coupled pair on a level circle less that on straight track at the same spacing, guides taken off, m. The bodies
 * are chords: their middles lie m = √(R² - a²/4) from the centre, pivots at p along the body √(m² + p²), and arctan(p/m) round.
 */
export function shiftOnCircle({ leading, trailing }: Pair, curvature: number): number {
  if (curvature === 0) return 0;
  const radius = 1 / Math.abs(curvature);
  const spacing = referenceSpacing(leading, trailing);
  const a = pivotOnCircle(leading, 'rear', radius);
  const b = pivotOnCircle(trailing, 'front', radius);
  const angle = spacing / radius + a.round - b.round;
  // Law of cosines, with 1 - cos written so that small angles keep their digits.
  const chord = 2 * sin(angle / 2);
  const distance = Math.sqrt((a.out - b.out) * (a.out - b.out) + a.out * b.out * chord * chord);
  const free = leading.rear.coupling.reach + trailing.front.coupling.reach;
  // Each shank turns from its body's axis, square to its own radius, to the line of pivots.
  const lean = atan((a.out - b.out) / (a.out * chord));
  const swingLeading = a.turned + angle / 2 + lean;
  const swingTrailing = angle / 2 - b.turned - lean;
  const guides =
    guideLengthening(leading.rear.coupling, swingLeading) + guideLengthening(trailing.front.coupling, swingTrailing);
  return distance - guides - free;
}

/** Where a pivot of a body stands on a circle: distance from the centre, angle ahead of the body's middle, and its turn against the body's axis. */
function pivotOnCircle(vehicle: Vehicle, end: 'front' | 'rear', radius: number) {
  const { pivotSpacing: base, bogies } = vehicle;
  const { ahead } = couplerPivot(vehicle, end);
  const middle = Math.sqrt(radius * radius - (base * base) / 4);
  const way = end === 'front' ? 1 : -1;
  if (bogies && vehicle[end].coupling.mount === 'bogie') {
    // Beyond the running point along the tangent there.
    const beyond = ahead - (way * base) / 2;
    const turn = atan(base / 2 / middle);
    const round = way * turn + atan(beyond / radius);
    return { out: hypot(radius, beyond), round, turned: -atan(beyond / radius) };
  }
  const round = atan(ahead / middle);
  return { out: hypot(middle, ahead), round, turned: -round };
}
