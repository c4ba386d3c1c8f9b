import { describe, expect, it } from 'vitest';
import { type Envelope, type Road, standsClearFrom } from '../../src/core/stock/index.ts';
import { arc, makeTrack, straight, type Track } from '../../src/core/track/index.ts';
import type { Scene, SceneElement, SceneTrack } from '../../src/scene/index.ts';
import { bareTrack, factsOf, railway } from '../sim/advice/sceneOf.ts';

const level = { points: [{ chainage: 0, height: 0 }] };
/** A level track from a point, heading in rad. */
const laid = (elements: Parameters<typeof makeTrack>[0]['elements'], heading = 0, x = 0): Track =>
  makeTrack({ start: { x, y: 0, heading }, elements, profile: level });
const whole = (track: Track): Road => ({ track, from: 0.02, to: track.length });
const steps = { step: 0.01, tolerance: 1e-7, settled: 0.3 };
/** So much to be kept clear of one track and of the other, m. */
const envelope = (one: Track, p: number, q: number): Envelope => ({
  reach: (track) => (track === one ? p : q),
  least: 0,
});

describe('standing clear of another road, by plane geometry', () => {
  it.each([
    [5, 0.017, 0.02],
    [8, 0.023, 0.023],
    [12, 0.02, 0.031],
  ])('where two straights part at 1 in %i: (p cos α + q)/sin α from where their middles cross', (oneIn, p, q) => {
    const angle = Math.atan(1 / oneIn);
    const [one, other] = [laid([straight(3)]), laid([straight(3)], angle)];
    const there = (p * Math.cos(angle) + q) / Math.sin(angle);
    expect(standsClearFrom(whole(one), whole(other), envelope(one, p, q), steps)).toBeCloseTo(there, 6);
    expect(standsClearFrom(whole(other), whole(one), envelope(other, p, q), steps)).toBeCloseTo(there, 6);
  });

  it('where an arc leaves a straight: its outer edge, R + p from the middle, is q off the straight at cos θ = (R − q)/(R + p)', () => {
    const [radius, p, q] = [0.6, 0.02, 0.018];
    const [line, bend] = [laid([straight(2)]), laid([arc(radius, 1.4)])];
    expect(standsClearFrom(whole(bend), whole(line), envelope(bend, p, q), steps)).toBeCloseTo(
      radius * Math.acos((radius - q) / (radius + p)),
      6,
    );
    // Standing on the straight: its near edge, R − p from the height of the middle, is at R + q from there.
    expect(standsClearFrom(whole(line), whole(bend), envelope(line, p, q), steps)).toBeCloseTo(
      Math.sqrt((radius + q) ** 2 - (radius - p) ** 2),
      6,
    );
  });

  it('is nowhere between tracks that stay too near, nor where less than a vehicle is left', () => {
    const near = makeTrack({ start: { x: 0, y: 0.04, heading: 0 }, elements: [straight(3)], profile: level });
    const line = laid([straight(3)]);
    expect(standsClearFrom(whole(line), whole(near), envelope(line, 0.021, 0.021), steps)).toBeNull();
    expect(standsClearFrom(whole(line), whole(near), envelope(line, 0.019, 0.019), steps)).toBeCloseTo(0.02, 6);
    const away = laid([straight(3)], 0.1);
    const stub = laid([straight(0.6)]);
    expect(standsClearFrom(whole(stub), whole(away), envelope(stub, 0.02, 0.02), steps)).toBeNull();
  });
});

const inH0 = (tracks: SceneTrack[], stock: Partial<Scene['stock'][number]>): Scene => {
  const scene = railway(tracks, true);
  return {
    ...scene,
    scale: { name: 'HO', gaugeMm: 16.5, ratio: 87 },
    stock: scene.stock.map((one) => ({ ...one, ...stock })),
  };
};
const throat = (turnout: Record<string, unknown>, alignment: SceneElement[]): SceneTrack[] => [
  bareTrack('main', [{ kind: 'straight', lengthMm: 4000 }]),
  bareTrack('branch', alignment, [], {
    branchOf: 'main',
    atMm: 1000,
    towards: 'end',
    turnout: { hand: 'left', gaugeMm: 16.5, frontMm: 0, heelMm: 0, ...turnout },
  } as SceneTrack['start']),
];

describe('fouling points of turnouts', () => {
  it('on an arc that goes on lie where the outer corners of coaches, thrown out by their overhang, miss half a coach', () => {
    const [radius, a, overhang, half] = [2000, 186, 30, 17];
    const scene = inH0(throat({ radiusMm: radius }, [{ kind: 'arc', radiusMm: radius, turn: 'left', angleDeg: 50 }]), {
      lengthMm: a + 2 * overhang,
      bogies: { centresMm: a, wheelbaseMm: 30 },
      widthMm: 2 * half,
    } as Partial<Scene['stock'][number]>);
    const [fact] = factsOf(scene, 'fouling-point');
    // The chord of the bogies √(R² − (a/2)²) from the middle, the corner half a width further and half a length along.
    const corner = Math.hypot(Math.sqrt(radius * radius - (a / 2) ** 2) + half, a / 2 + overhang);
    const hit = (fact.stands[1].hit ?? Number.NaN) * 1000;
    // Sides are followed in steps of 9.9 mm: between two of them a corner is missed by 9.9²/8R at most, 6 µm, which is 0.02 mm along. Places to 0.1 mm.
    expect(Math.abs(hit - radius * Math.acos((radius - half) / corner))).toBeLessThan(0.15);
  });

  it('of vehicles as wide as full size allows lie about the mark of 3.50 m between tracks: bodies touch before it, the norm’s 46 mm are kept beyond', () => {
    // Full size: the mark stands where middles are 3.50 m apart as a rule (encyclopaedic, de.wiki: Grenzzeichen), 3.4 to 3.5 m (Röll, Enzyklopädie des
    // Eisenbahnwesens, 1912, Merkzeichen). Vehicles are up to 3.15 m wide (from memory). NEM 112 (secondary print): 46 mm on the line, 4.00 m in 1:87.
    const [oneIn, radius] = [9, 900];
    const alpha = Math.atan(1 / oneIn);
    const scene = inH0(throat({ radiusMm: radius, crossing: { oneIn } }, [{ kind: 'straight', lengthMm: 1800 }]), {
      lengthMm: 115,
      bogies: { centresMm: 75, wheelbaseMm: 25 },
      widthMm: 3150 / 87,
    } as Partial<Scene['stock'][number]>);
    const [fact] = factsOf(scene, 'fouling-point');
    // Middles cross a tangent's length behind the start of the curve, which begins at the toe.
    const tangent = radius * Math.tan(alpha / 2);
    const apartOnMain = (at: number | null): number => ((at ?? Number.NaN) * 1000 - 1000 - tangent) * Math.sin(alpha);
    const apartOnBranch = (at: number | null): number =>
      ((at ?? Number.NaN) * 1000 - radius * alpha + tangent) * Math.sin(alpha);
    const mark = 3500 / 87;
    for (const [{ hit, clear }, apart] of [
      [fact.stands[0], apartOnMain],
      [fact.stands[1], apartOnBranch],
    ] as const) {
      // Both bodies by half their width, the one laid off square to its own road: (1 + cos α)/2 of the whole.
      expect(apart(hit)).toBeCloseTo(((3150 / 87) * (1 + Math.cos(alpha))) / 2, 1);
      expect(apart(hit)).toBeLessThan(mark);
      expect(apart(clear)).toBeCloseTo((46 * (1 + Math.cos(alpha))) / 2, 1);
      expect(apart(clear)).toBeGreaterThan(mark);
    }
    expect(fact.limit).toBeCloseTo(0.046, 9);
    expect(fact.weight).toBe('note');
  });

  it('are the mirror image’s, and those of the turnout that leads the other way', () => {
    const facts = (['left', 'right'] as const).flatMap((hand) =>
      (['end', 'start'] as const).map((towards) => {
        const [main, branch] = throat({ radiusMm: 600, hand, crossing: { oneIn: 8 } }, [
          { kind: 'straight', lengthMm: 900 },
        ]);
        const turned = { ...branch, start: { ...branch.start, towards, atMm: towards === 'end' ? 1000 : 3000 } };
        return factsOf(inH0([main, turned as SceneTrack], {}), 'fouling-point')[0];
      }),
    );
    const [first, ...more] = facts;
    expect(first.value).toBeGreaterThan(0.3);
    for (const one of more) {
      expect(one.value).toBeCloseTo(first.value, 4);
      expect(one.stands[1].clear).toBeCloseTo(first.stands[1].clear ?? Number.NaN, 4);
    }
    expect(facts[1].stands[0].clear).toBeCloseTo(4 - (first.stands[0].clear ?? Number.NaN), 4);
  });
});
