import { describe, expect, it } from 'vitest';
import { makeTrack, straight } from '../../../src/core/track/index.ts';
import { wayFace, wayStroke } from '../../../src/stage/palette.ts';
import { stripTop, stripUnderside } from '../../../src/stage/way/measures.ts';
import { layStations, stationChainages } from '../../../src/stage/way/stations.ts';
import { cutStretches, farStretch, nearStretch } from '../../../src/stage/way/stretch.ts';
import { levelCircle, measures, vertices, windingTrack } from '../samples.ts';

const whole = (length: number) => ({ from: 0, to: length });

describe('stations', () => {
  it('keep chords within the tolerance of a circle', () => {
    const track = levelCircle();
    const tolerance = 2e-4;
    const at = layStations(track, stationChainages(track, 0, track.length, tolerance, []));
    let most = 0;
    for (let i = 1; i < at.count; i++) {
      const x = (at.centre[3 * i] + at.centre[3 * i - 3]) / 2;
      const y = (at.centre[3 * i + 1] + at.centre[3 * i - 2]) / 2;
      // The circle's centre lies 600 mm to the left of the start.
      most = Math.max(most, 0.6 - Math.hypot(x, y - 0.6));
    }
    expect(most).toBeGreaterThan(0.5 * tolerance);
    expect(most).toBeLessThan(1.01 * tolerance);
  });

  it('hold both ends and every place asked for, in order', () => {
    const track = windingTrack();
    const list = stationChainages(track, 0.1, 1.9, 1e-3, [0.05, 0.73, 1.2]);
    expect(list[0]).toBe(0.1);
    expect(list.at(-1)).toBe(1.9);
    expect(list).toContain(0.73);
    expect(list).toContain(1.2);
    expect(list).not.toContain(0.05);
    expect([...list].sort((a, b) => a - b)).toEqual(list);
  });
});

describe('a stretch from afar', () => {
  it('has the strip half its width to either side, its top under the sleepers', () => {
    const track = levelCircle();
    const solid = farStretch(track, whole(1), measures, []);
    const tops = vertices(solid).filter((_, i) => solid.role[i] === wayFace.top);
    for (const [x, y, z] of tops) {
      const away = Math.abs(Math.hypot(x, y - 0.6) - 0.6);
      expect(away).toBeCloseTo(measures.stripWidth / 2, 9);
      expect(z).toBeCloseTo(0.1 - 0.005, 12);
    }
    const undersides = vertices(solid).filter((_, i) => solid.role[i] === wayFace.under);
    for (const [, , z] of undersides) expect(z).toBeCloseTo(0.1 - 0.005 - 0.003 - 0.009, 12);
  });

  it('faces outward on every side', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(1)],
      profile: { points: [{ chainage: 0, height: 0.1 }] },
    });
    const solid = farStretch(track, whole(1), measures, []);
    const at = vertices(solid);
    for (let i = 0; i < solid.index.length; i += 3) {
      const [a, b, c] = solid.index.slice(i, i + 3);
      const u = at[b].map((value, axis) => value - at[a][axis]);
      const v = at[c].map((value, axis) => value - at[a][axis]);
      const cross = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      const along = cross.reduce((sum, value, axis) => sum + value * solid.normal[3 * a + axis], 0);
      expect(along).toBeGreaterThan(0);
    }
  });

  it('paints only the top, at its own chainages', () => {
    const solid = farStretch(windingTrack(), { from: 0.4, to: 1.2 }, measures, []);
    expect(solid.paint).toHaveLength(2 * solid.role.length);
    const painted = solid.role.flatMap((role, i) =>
      Math.abs(solid.paint[2 * i + 1]) < 1 ? [{ role, s: solid.paint[2 * i] }] : [],
    );
    expect(painted.length).toBeGreaterThan(0);
    for (const { role, s } of painted) {
      expect(role).toBe(wayFace.top);
      expect(s).toBeGreaterThanOrEqual(0.4);
      expect(s).toBeLessThanOrEqual(1.2);
    }
  });

  it('draws two rails whose inner edges are the gauge apart', () => {
    const solid = farStretch(levelCircle(), whole(0.5), measures, []);
    const radii = new Set<number>();
    solid.strokes.style.forEach((role, i) => {
      if (i % 3 !== 2 || role !== wayStroke.rail) return;
      const [x, y] = solid.strokes.from.slice(i - 2, i);
      radii.add(Math.round(Math.hypot(x, y - 0.6) * 1e7) / 1e7);
    });
    const [inner, outer] = [...radii].sort((a, b) => a - b);
    expect(radii.size).toBe(2);
    expect(outer - inner - measures.railHead).toBeCloseTo(0.0165, 6);
  });
});

describe('a stretch from nearby', () => {
  it('has rails from the rail top down to the sleepers, and sleepers down to the underlay', () => {
    const solid = nearStretch(levelCircle(), whole(0.2), measures, []);
    const heights = (roles: readonly number[]) =>
      vertices(solid).flatMap(([, , z], i) => (roles.includes(solid.role[i]) ? [z - 0.1] : []));
    const rails = heights([wayFace.railTop, wayFace.railSide]);
    expect(Math.max(...rails)).toBeCloseTo(0, 12);
    expect(Math.min(...rails)).toBeCloseTo(-measures.railHeight, 12);
    const sleepers = heights([wayFace.sleeper, wayFace.sleeperSide]);
    expect(Math.max(...sleepers)).toBeCloseTo(-measures.railHeight, 12);
    expect(Math.min(...sleepers)).toBeCloseTo(-0.005, 12);
  });

  it('leaves the gauge free between the rail heads', () => {
    const track = makeTrack({
      start: { x: 0, y: 0, heading: 0 },
      elements: [straight(0.2)],
      profile: { points: [{ chainage: 0, height: 0 }] },
    });
    const solid = nearStretch(track, whole(0.2), measures, []);
    const heads = vertices(solid).filter(
      (_, i) => solid.role[i] === wayFace.railTop && Math.abs(solid.position[3 * i + 2]) < 1e-9,
    );
    const least = Math.min(...heads.map(([, y]) => Math.abs(y)));
    expect(2 * least).toBeCloseTo(0.0165, 9);
  });

  it('lays one sleeper a pitch, the pattern running on from stretch to stretch', () => {
    const track = windingTrack();
    const sleepers = (from: number, to: number) =>
      nearStretch(track, { from, to }, measures, []).role.filter((role) => role === wayFace.sleeper).length / 4;
    expect(sleepers(0, 0.5) + sleepers(0.5, 1)).toBe(sleepers(0, 1));
    expect(sleepers(0, 1)).toBe(Math.floor(1 / measures.sleeperPitch + 0.5));
  });
});

describe('cutStretches', () => {
  it('covers the track without gaps', () => {
    const list = cutStretches(7.3);
    expect(list[0].from).toBe(0);
    expect(list.at(-1)?.to).toBeCloseTo(7.3, 12);
    list.slice(1).forEach((stretch, i) => {
      expect(stretch.from).toBe(list[i].to);
    });
  });
});

describe('measures', () => {
  it('stack up to the deck of the file', () => {
    expect(stripTop(measures)).toBeCloseTo(0.005, 12);
    expect(stripUnderside(measures)).toBeCloseTo(0.017, 12);
  });
});
