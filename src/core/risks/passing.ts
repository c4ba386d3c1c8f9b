import { frontReach, pointOnVehicle, rearReach, sweptKinds, type Vehicle } from '../stock/index.ts';
import { sayNothing } from './moments/sample.ts';
import { footFrom, layInRows, newFoot } from './moments/trackRows.ts';
import { neighboursOf } from './room/neighbours.ts';
import { sweptAlong } from './room/sweptAlong.ts';
import { bodyPlaces, nothingSwept } from './room/sweptRows.ts';
import type { RiskDefinition } from './types.ts';

/**
 * Distance between the points that stand for a track beside, in gauges: 5 mm in H0. The line between two of them errs by 0.01 mm sideways on
 * a curve of 400 mm.
 */
const spacingInGauges = 0.3;

/** Furthest a body may stand out of its centreline on a curve, in half body widths, when looking for tracks beside. */
const bodyReach = 3;

/**
 * Passing, m: how far a vehicle stands from the middle of the track beside, at the nearest of five points of its near side, against what
 * vehicles on that track sweep to this side there. Tracks beside are those at nearly its height, less than a vehicle above or below,
 * that do not meet its own there; bodies that just touch have a margin of 0. On the other track go the vehicles that the
 * surroundings name, else those of the train itself.
 */
export const passing: RiskDefinition = {
  id: 'passing',
  subject: 'vehicle',
  unit: 'length',
  plenty: 0.01,
  near: 0.002,
  prepare({ path, train, surroundings }) {
    const { vehicles } = train;
    const passers = sweptKinds(surroundings.passers ?? vehicles);
    const gauge = Math.max(...vehicles.map((vehicle) => vehicle.gauge));
    const passerHeight = Math.max(...passers.map((vehicle) => vehicle.bodyHeight));
    const height = Math.max(passerHeight, ...vehicles.map((vehicle) => vehicle.bodyHeight));
    const rows = layInRows(surroundings.tracks, spacingInGauges * gauge);
    const neighbours = neighboursOf(path.track, rows, {
      gauge,
      spacing: spacingInGauges * gauge,
      within: (bodyReach * (widest(vehicles) + widest(passers))) / 2,
      height,
    });
    if (neighbours === null) return null;
    const { nodes, spacing, start, point, side, facing } = neighbours;
    const swept = nothingSwept(rows.x.length);
    const beside = new Set(point.map((k) => rows.first[k]));
    surroundings.tracks.forEach((track, t) => {
      if (!beside.has(rows.start[t])) return;
      const along = sweptAlong(rows, t, track, passers);
      swept.left.set(along.left, rows.start[t]);
      swept.right.set(along.right, rows.start[t]);
    });
    const foot = newFoot();
    const corner: [number, number, number] = [0, 0, 0];
    return {
      sample(frame, index, out) {
        sayNothing(out);
        const vehicle = vehicles[index];
        const placement = frame.placements[index];
        const front = frontReach(vehicle);
        const rear = rearReach(vehicle);
        const half = vehicle.bodyWidth / 2;
        const chainagePerMetre = (placement.frontChainage - placement.rearChainage) / vehicle.pivotSpacing;
        for (let place = 0; place < bodyPlaces; place++) {
          const ahead = -rear + ((front + rear) * place) / (bodyPlaces - 1);
          const chainage = placement.chainage + ahead * chainagePerMetre;
          const node = Math.min(nodes - 1, Math.max(0, Math.round(chainage / spacing)));
          for (let strand = start[node]; strand < start[node + 1]; strand++) {
            pointOnVehicle(placement, ahead, facing[strand] * half, 0, corner);
            footFrom(rows, point[strand], corner[0], corner[1], foot);
            const above = foot.z - corner[2];
            if (foot.beyond || above >= vehicle.bodyHeight || above <= -passerHeight) continue;
            const sides = side[strand] > 0 ? swept.left : swept.right;
            const takes = sides[foot.point] + foot.share * (sides[foot.point + 1] - sides[foot.point]);
            const there = side[strand] * foot.left;
            if (takes === 0 || there - takes >= out.margin) continue;
            out.value = takes;
            out.limit = there;
            out.margin = there - takes;
            out.governing = 'beside';
          }
        }
      },
      parts: () => [],
    };
  },
};

const widest = (vehicles: readonly Vehicle[]): number => Math.max(...vehicles.map((vehicle) => vehicle.bodyWidth));
