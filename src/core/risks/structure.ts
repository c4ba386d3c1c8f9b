import { hypot } from '../math/index.ts';
import { frontReach, type Placement, rearReach, type Vehicle } from '../stock/index.ts';
import { type TrackPoint, trackPoint } from '../track/index.ts';
import { sayNothing } from './moments/sample.ts';
import type { Governing, RiskDefinition, Structure } from './types.ts';

/** Structures further from a body than this are no matter, in gauges: 33 mm in H0. */
const outOfReachInGauges = 2;

/** Places of the path at which it is noted what stands near are this far apart, in gauges: 50 mm in H0. */
const spacingInGauges = 3;

/** A structure made ready: the circle about it in plan, and the outward normals of its sides. */
interface Prism {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly normalX: Float64Array;
  readonly normalY: Float64Array;
  readonly bottom: number;
  readonly top: number;
  readonly middleX: number;
  readonly middleY: number;
  readonly around: number;
}

function prismOf({ outline, bottom, top }: Structure): Prism {
  const n = outline.length;
  const x = Float64Array.from(outline, ([px]) => px);
  const y = Float64Array.from(outline, ([, py]) => py);
  const normalX = new Float64Array(n);
  const normalY = new Float64Array(n);
  let middleX = 0;
  let middleY = 0;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const side = hypot(x[j] - x[i], y[j] - y[i]);
    normalX[i] = (y[j] - y[i]) / side;
    normalY[i] = (x[i] - x[j]) / side;
    middleX += x[i] / n;
    middleY += y[i] / n;
  }
  let around = 0;
  for (let i = 0; i < n; i++) around = Math.max(around, hypot(x[i] - middleX, y[i] - middleY));
  return { x, y, normalX, normalY, bottom, top, middleX, middleY, around };
}

/** A vehicle's body as a box in its own axes, m from its origin at rail level. */
interface Box {
  readonly front: number;
  readonly rear: number;
  readonly half: number;
  readonly bottom: number;
  readonly top: number;
}

const boxOf = (vehicle: Vehicle): Box => ({
  front: frontReach(vehicle),
  rear: rearReach(vehicle),
  half: vehicle.bodyWidth / 2,
  bottom: vehicle.underside,
  top: vehicle.bodyHeight,
});

/** What lies between a body and a structure: the widest gap along any of the directions looked at, m, and whether it is upward. */
interface Gap {
  by: number;
  above: boolean;
}

/**
 * Gap between a placed body and a prism, m; negative: they run into each other by so much. The widest over the faces of both: the body's six, the prism's sides, its top and its
 * bottom. Where they are apart it is never more than the true distance, and where body and prism stand upright to each other its sign is exact (separating axes).
 */
function gapBetween(placed: Placement, box: Box, prism: Prism, out: Gap): void {
  const { origin, ahead, left, up } = placed;
  const { x, y, bottom, top } = prism;
  out.by = Number.NEGATIVE_INFINITY;
  out.above = false;
  for (let axis = 0; axis < 3; axis++) {
    const a = axis === 0 ? ahead : axis === 1 ? left : up;
    const most = axis === 0 ? box.front : axis === 1 ? box.half : box.top;
    const least = axis === 0 ? -box.rear : axis === 1 ? -box.half : box.bottom;
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < x.length; i++) {
      const along = (x[i] - origin[0]) * a[0] + (y[i] - origin[1]) * a[1];
      if (along < low) low = along;
      if (along > high) high = along;
    }
    const foot = (bottom - origin[2]) * a[2];
    const head = (top - origin[2]) * a[2];
    low += Math.min(foot, head);
    high += Math.max(foot, head);
    const gap = Math.max(low - most, least - high);
    if (gap <= out.by) continue;
    out.by = gap;
    out.above = axis === 2 && low - most > least - high;
  }
  const alongMiddle = (box.front - box.rear) / 2;
  const alongHalf = (box.front + box.rear) / 2;
  const upMiddle = (box.top + box.bottom) / 2;
  const upHalf = (box.top - box.bottom) / 2;
  for (let side = 0; side < x.length; side++) {
    const nx = prism.normalX[side];
    const ny = prism.normalY[side];
    const along = ahead[0] * nx + ahead[1] * ny;
    const across = left[0] * nx + left[1] * ny;
    const upward = up[0] * nx + up[1] * ny;
    const middle = (origin[0] - x[side]) * nx + (origin[1] - y[side]) * ny + alongMiddle * along + upMiddle * upward;
    const gap = middle - alongHalf * Math.abs(along) - box.half * Math.abs(across) - upHalf * Math.abs(upward);
    if (gap <= out.by) continue;
    out.by = gap;
    out.above = false;
  }
  const height = origin[2] + alongMiddle * ahead[2] + upMiddle * up[2];
  const reach = alongHalf * Math.abs(ahead[2]) + box.half * Math.abs(left[2]) + upHalf * Math.abs(up[2]);
  const over = bottom - (height + reach);
  const under = height - reach - top;
  if (Math.max(over, under) <= out.by) return;
  out.by = Math.max(over, under);
  out.above = over > under;
}

/**
 * Structures, m: the gap between a vehicle's body and the nearest wall, pier or portal, beside it or above. The body is a box over its whole length, rolled and pitched as it stands, so
 * throw, cant and grade are in it; bodies that just touch have 0. Value and limit are those of the face that the gap is measured from: half the body's width against the way to the
 * structure, or its height.
 */
export const structure: RiskDefinition = {
  id: 'structure',
  subject: 'vehicle',
  unit: 'length',
  plenty: 0.01,
  near: 0.002,
  prepare({ path, train, surroundings }) {
    const structures = surroundings.structures ?? [];
    if (structures.length === 0) return null;
    const { vehicles } = train;
    const { track } = path;
    const gauge = Math.max(...vehicles.map((vehicle) => vehicle.gauge));
    const reach = outOfReachInGauges * gauge;
    const boxes = vehicles.map(boxOf);
    const spacing = spacingInGauges * gauge;
    const bodies = Math.max(...boxes.map(({ front, rear, half, top }) => hypot(Math.max(front, rear), half, top)));
    const near = nearPath(structures.map(prismOf), track.length, spacing, bodies + reach + spacing, (chainage, out) =>
      trackPoint(track, chainage, out),
    );
    if (near.every((prisms) => prisms.length === 0)) return null;
    const gap: Gap = { by: 0, above: false };
    return {
      sample(frame, index, out) {
        sayNothing(out);
        const placement = frame.placements[index];
        const { half, top } = boxes[index];
        const node = Math.min(near.length - 1, Math.max(0, Math.round(placement.chainage / spacing)));
        let least = reach;
        let governing: Governing | null = null;
        for (const prism of near[node]) {
          gapBetween(placement, boxes[index], prism, gap);
          if (gap.by >= least) continue;
          least = gap.by;
          governing = gap.above ? 'lintel' : 'wall';
        }
        if (governing === null) return;
        out.value = governing === 'lintel' ? top : half;
        out.limit = out.value + least;
        out.margin = least;
        out.governing = governing;
      },
      parts: () => [],
    };
  },
};

/** The structure nearest to a placed vehicle; null without any. */
export function nearestStructure(
  structures: readonly Structure[],
  vehicle: Vehicle,
  placement: Placement,
): Structure | null {
  const box = boxOf(vehicle);
  const gap: Gap = { by: 0, above: false };
  let least = Number.POSITIVE_INFINITY;
  let nearest: Structure | null = null;
  for (const one of structures) {
    gapBetween(placement, box, prismOf(one), gap);
    if (gap.by >= least) continue;
    least = gap.by;
    nearest = one;
  }
  return nearest;
}

/** For every place of a path the prisms that a body there may come near, `within` (m) of it. */
function nearPath(
  prisms: readonly Prism[],
  length: number,
  spacing: number,
  within: number,
  at: (chainage: number, out?: TrackPoint) => TrackPoint,
): readonly (readonly Prism[])[] {
  const nodes = Math.ceil(length / spacing) + 1;
  let here: TrackPoint | undefined;
  return Array.from({ length: nodes }, (_, node) => {
    here = at(node * spacing, here);
    const { x, y, z } = here;
    return prisms.filter(
      (prism) =>
        hypot(prism.middleX - x, prism.middleY - y) <= prism.around + within &&
        prism.bottom <= z + within &&
        prism.top >= z - within,
    );
  });
}
