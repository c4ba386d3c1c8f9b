import { frontReach, pointOnVehicle, rearReach } from '../stock/index.ts';
import { sayNothing } from './moments/sample.ts';
import { indexDecks } from './room/deckIndex.ts';
import type { RiskDefinition } from './types.ts';

/**
 * Half the width of a deck where the scene gives none, in gauges: 35 mm for 16.5 mm gauge. Source: NEM 122 (2007), formation
 * of H0 70 mm wide.
 */
const deckHalfWidthInGauges = 35 / 16.5;

/** Furthest a body may stand out of its centreline on a curve, in half body widths, when looking for decks. */
const bodyReach = 3;

/**
 * Headroom, m: a vehicle's height against the clear height between its own rail and the underside of the deck above, the least
 * at six points of the roof (both ends and midway between the running points, both sides), so throw and pitch are in it. A deck whose underside is lower
 * than the vehicle's axles lies beside it and not above. The body is taken as a box up to its full height.
 */
export const headroom: RiskDefinition = {
  id: 'headroom',
  subject: 'vehicle',
  unit: 'length',
  plenty: 0.02,
  near: 0.003,
  prepare(context) {
    const { path, train, surroundings } = context;
    const { vehicles } = train;
    const gauge = Math.max(...vehicles.map((vehicle) => vehicle.gauge));
    const halfWidth = surroundings.deckHalfWidth ?? deckHalfWidthInGauges * gauge;
    const reach = bodyReach * Math.max(...vehicles.map((vehicle) => vehicle.bodyWidth / 2));
    const decks = indexDecks(path.track, surroundings, { gauge, halfWidth, reach });
    if (decks === null) return null;
    const corner: [number, number, number] = [0, 0, 0];
    return {
      sample(frame, index, out) {
        const vehicle = vehicles[index];
        const placement = frame.placements[index];
        const { bodyHeight, wheelRadius } = vehicle;
        const front = frontReach(vehicle);
        const rear = rearReach(vehicle);
        const side = vehicle.bodyWidth / 2;
        const chainagePerMetre = (placement.frontChainage - placement.rearChainage) / vehicle.pivotSpacing;
        let clear = Number.POSITIVE_INFINITY;
        for (let place = 0; place < 3; place++) {
          const ahead = place === 0 ? front : place === 1 ? 0 : -rear;
          for (let turn = -1; turn <= 1; turn += 2) {
            pointOnVehicle(placement, ahead, turn * side, bodyHeight, corner);
            const rail = corner[2] - bodyHeight;
            const chainage = placement.chainage + ahead * chainagePerMetre;
            const underside = decks.undersideOver(corner[0], corner[1], rail + wheelRadius, chainage);
            if (underside - rail < clear) clear = underside - rail;
          }
        }
        if (clear === Number.POSITIVE_INFINITY) return sayNothing(out);
        out.value = bodyHeight;
        out.limit = clear;
        out.margin = clear - bodyHeight;
        out.governing = 'deck';
      },
      parts: () => [],
    };
  },
};
