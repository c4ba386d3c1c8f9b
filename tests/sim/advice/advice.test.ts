/* Over 300 lines for a reason: every kind of advice is worked by hand on one small railway. */
import { describe, expect, it } from 'vitest';
import { jointGeometry, placeCoupled, placeVehicle } from '../../../src/core/stock/index.ts';
import type { SceneElement, SceneTrack } from '../../../src/scene/index.ts';
import { collectionOf } from '../../../src/sim/advice/collection.ts';
import { advised } from '../../../src/sim/advice/index.ts';
import { compileScene } from '../../../src/sim/index.ts';
import { bareTrack, factsOf, railway } from './sceneOf.ts';

const straight = (lengthMm: number): SceneElement => ({ kind: 'straight', lengthMm });
const arc = (radiusMm: number, turn: 'left' | 'right', angleDeg: number): SceneElement => ({
  kind: 'arc',
  radiusMm,
  turn,
  angleDeg,
});

describe('two tracks round one helix', () => {
  /** Three turns about the corner of the room that rise 240 mm in all. */
  const coil = (id: string, radiusMm: number, yMm = -radiusMm): SceneTrack =>
    bareTrack(
      id,
      [{ kind: 'helix', id: 'helix', radiusMm, turn: 'left', turns: 3 }],
      [
        { atMm: 0, heightMm: 0 },
        { at: { endOf: 'track' }, heightMm: 240 },
      ],
      { xMm: 0, yMm, headingDeg: 0 },
    );

  it('are not equally steep for the same rise', () => {
    const [inner, ...more] = factsOf(railway([coil('inner', 600), coil('outer', 660)]), 'helix-grades');
    expect(more).toEqual([]);
    expect(inner.trackId).toBe('inner');
    // By hand: 240/(3·2π·600) and 240/(3·2π·660).
    expect(inner.value).toBeCloseTo(0.0212207, 6);
    expect(inner.limit).toBeCloseTo(0.0192915, 6);
    expect(inner.tracks.map(({ trackId }) => trackId)).toEqual(['inner', 'outer']);
    for (const { perTurn } of inner.tracks) expect(perTurn).toBeCloseTo(0.08, 9);
    expect(inner.chainage).toBeCloseTo((3 * 2 * Math.PI * 0.6) / 2, 9);
  });

  it('are two helices when they stand apart', () => {
    expect(factsOf(railway([coil('inner', 600), coil('outer', 660, 2000)]), 'helix-grades')).toEqual([]);
  });
});

describe('headroom', () => {
  /** Two lines that cross square at 2 m; decks 17 mm deep. */
  const crossing = (heightMm: number) =>
    railway([
      bareTrack('under', [straight(4000)]),
      bareTrack('over', [straight(4000)], [{ atMm: 0, heightMm }], { xMm: 2000, yMm: -2000, headingDeg: 90 }),
    ]);

  it('is told with the track that passes, at the place where it does', () => {
    const [fact, ...more] = factsOf(crossing(100), 'headroom');
    expect(more).toEqual([]);
    expect(fact).toMatchObject({ trackId: 'under', over: 'over', weight: 'note' });
    expect(fact.value).toBeCloseTo(0.083, 9);
    expect(Math.abs(fact.chainage - 2)).toBeLessThan(0.04);
  });

  it('comes near under the clear height of the norm, 59 mm in H0, and fails under the tallest vehicle', () => {
    // Source: NEM 102 (2017), clear height without wire.
    expect(factsOf(crossing(75), 'headroom')[0]).toMatchObject({ weight: 'near', norm: 0.059 });
    expect(factsOf(crossing(60), 'headroom')[0].weight).toBe('wrong');
  });

  it('is the least of all turns of a helix', () => {
    // 100 mm a turn but for the second, which rises 70: the deck's 17 mm leave 53.
    const turn = 2 * Math.PI * 600;
    const scene = railway([
      bareTrack(
        'coil',
        [{ kind: 'helix', id: 'helix', radiusMm: 600, turn: 'left', turns: 3 }],
        [
          { atMm: 0, heightMm: 0 },
          { atMm: turn, heightMm: 100 },
          { atMm: 2 * turn, heightMm: 170 },
          { atMm: 3 * turn, heightMm: 270 },
        ],
      ),
    ]);
    const [fact, ...more] = factsOf(scene, 'headroom');
    expect(more).toEqual([]);
    expect(fact.over).toBe('coil');
    // Over the break stand 70 mm; of the deck above, all within half its width (35 mm) counts, which lies up to 35 mm at 2.7 % lower.
    expect(fact.value).toBeGreaterThan(0.053 - 0.035 * 0.027);
    expect(fact.value).toBeLessThan(0.053);
    expect(Math.abs(fact.chainage - turn / 1000)).toBeLessThan(0.1);
  });
});

describe('the longest vehicle of a radius', () => {
  const round = (radiusMm: number) =>
    railway([bareTrack('line', [straight(3000), arc(radiusMm, 'left', 90), straight(3000)])], true);

  it('is the coach at 400 mm', () => {
    const [fact] = factsOf(round(400), 'longest-vehicle');
    expect(fact).toMatchObject({ vehicle: 'Coach', weight: 'note', edit: null });
    expect(fact.value).toBeCloseTo(0.258, 9);
  });

  it('is none where its couplings swing further than their pockets let them', () => {
    const [fact] = factsOf(round(250), 'longest-vehicle');
    // By hand, shank pivots 114.5 mm either way of the middle, 37 mm apart on the joint:
    // m = √(250² - 93²) = 232.06; atan(114.5/232.06) + asin(18.5/√(232.06² + 114.5²)) = 26.261° + 4.100°.
    expect(fact.weight).toBe('wrong');
    expect(fact.vehicle).toBeNull();
    expect(fact.tooLong).toHaveLength(1);
    expect(fact.tooLong[0]).toMatchObject({ vehicle: 'Coach', why: 'swing' });
    expect((fact.tooLong[0].value * 180) / Math.PI).toBeCloseTo(30.361, 2);
    expect((fact.tooLong[0].limit * 180) / Math.PI).toBeCloseTo(30, 9);
    // The same at 255 mm: 25.748° + 4.024° = 29.77°.
    expect(fact.radiusForAll).toBeCloseTo(0.255, 9);
  });

  it('is told by which vehicle it is, not by what that is called', () => {
    // A short coach that goes round, and a long one that does not, of one name.
    const scene = round(250);
    const [coach] = scene.stock;
    const short = { ...coach, id: 'short', overBuffersMm: 150, bogies: { centresMm: 90, wheelbaseMm: 25 } };
    const [fact] = factsOf({ ...scene, stock: [coach, short] }, 'longest-vehicle');
    expect(fact.tooLong.map(({ stock }) => stock)).toEqual([0]);
    expect(fact.vehicle).toBe(coach.name);
    expect(fact.value).toBeLessThan(fact.limit);
  });

  it('is answered by the least radius that all go round', () => {
    const scene = round(250);
    const [{ edit, trackId }] = factsOf(scene, 'longest-vehicle');
    expect(edit).toEqual({ kind: 'radius', element: 1, radiusMm: 255 });
    if (edit === null) return;
    expect(factsOf(advised(scene, trackId, edit), 'longest-vehicle')[0].weight).toBe('note');
  });

  it('asks of a rigid wheelbase what the norm does', () => {
    // Source: NEM 111 (2016) par. 2.1, 12°: the engine's 60 mm need 60/(2 sin 12°) = 144.3 mm.
    const scene = railway([bareTrack('line', [arc(140, 'left', 90)])]);
    const engine = {
      ...scene,
      stock: scene.stock.filter(({ id }) => id === 'engine'),
      trains: [{ id: 'train', name: 'Train', vehicles: [{ stock: 'engine' }] }],
      couplings: [{ id: 'bar', kind: 'link' as const }],
    };
    const [fact] = factsOf(engine, 'longest-vehicle');
    expect(fact.tooLong[0].why).toBe('wheelbase');
    expect(fact.radiusForAll).toBeCloseTo(0.145, 9);
  });
});

describe('a curve and its reverse', () => {
  /** Coaches on links, which push through their buffers. */
  const linked = (between: SceneElement[]) => ({
    ...railway(
      [bareTrack('line', [straight(800), arc(500, 'left', 60), ...between, arc(500, 'right', 60), straight(800)])],
      true,
    ),
    couplings: [{ id: 'bar', kind: 'link' as const }],
  });

  it('lock buffers when nothing lies between them', () => {
    const scene = linked([]);
    const [fact, ...more] = factsOf(scene, 'reverse-curve');
    expect(more).toEqual([]);
    expect(fact).toMatchObject({ weight: 'wrong', value: 0, eased: false, pair: ['Coach', 'Coach'] });
    expect(fact.chainage).toBeCloseTo(0.8 + (0.5 * Math.PI) / 3, 9);
    // The handbook's greatest offset is (L² - a²)/4R = (258² - 186²)/2000 = 15.98 mm. Heads 6 mm wide are past each other long before, and the pair is
    // told where its faces are pressed furthest as well.
    expect(fact.buffers?.aside).toBeGreaterThan(fact.buffers?.overlap ?? Number.NaN);
    expect(fact.buffers?.aside).toBeLessThan(0.01598);
    expect(fact.buffers?.gap).toBeLessThan(0);
    expect(fact.limit).toBeCloseTo(0.258, 9);
    expect(fact.edit).toEqual({ kind: 'ease', joins: [{ index: 2, lengthMm: 260 }] });
  });

  it('gain by the easement that is proposed', () => {
    const scene = linked([]);
    const [before] = factsOf(scene, 'reverse-curve');
    if (before.edit === null) throw new Error('an edit is proposed');
    const [after] = factsOf(advised(scene, before.trackId, before.edit), 'reverse-curve');
    expect(after?.buffers?.aside ?? 0).toBeLessThan(before.buffers?.aside ?? 0);
  });

  it('are no matter with two coaches of straight between', () => {
    expect(factsOf(linked([straight(2 * 258)]), 'reverse-curve')).toEqual([]);
  });

  it('want a longer straight by the norm even where nothing locks yet', () => {
    const gentle = {
      ...railway([bareTrack('line', [arc(3000, 'left', 30), straight(100), arc(3000, 'right', 30)])], true),
    };
    const [fact] = factsOf(gentle, 'reverse-curve');
    expect(fact.weight).toBe('near');
    expect(fact.value).toBeCloseTo(0.1, 9);
  });
});

describe('a change of grade at once', () => {
  const broken = (percent: number) =>
    railway([
      bareTrack(
        'line',
        [straight(6000)],
        [
          { atMm: 0, heightMm: 0 },
          { atMm: 3000, heightMm: 0 },
          { at: { endOf: 'track' }, heightMm: 30 * percent },
        ],
      ),
    ]);

  it('steps coupled heads by the change times what stands out over the running point', () => {
    // By hand: overhang 30, less inset 8.5, and reach 18.5: 40 mm, and 2.5 mm of face, half of it to keep.
    const [fact] = factsOf(broken(2.5), 'grade-break');
    expect(fact).toMatchObject({ weight: 'near', chainage: 3 });
    expect(fact.value).toBeCloseTo(0.001, 9);
    expect(fact.limit).toBeCloseTo(0.00125, 9);
    expect(factsOf(broken(4), 'grade-break')[0].weight).toBe('wrong');
    expect(factsOf(broken(0.2), 'grade-break')).toEqual([]);
  });

  it('is what the vehicles themselves show there', () => {
    const compiled = compileScene(broken(2.5));
    const [fact] = factsOf(compiled.scene, 'grade-break');
    const track = compiled.tracks.get('line');
    if (track === undefined) throw new Error('the line is there');
    let most = 0;
    for (const { leading, trailing } of collectionOf(compiled.scene).pairs) {
      for (let s = 2.8; s < 3.6; s += 0.002) {
        const behind = placeCoupled(track, leading, trailing, s);
        const joint = jointGeometry(
          leading,
          trailing,
          placeVehicle(track, leading, s),
          placeVehicle(track, trailing, behind),
        );
        most = Math.max(most, Math.abs(joint.verticalOffset));
      }
    }
    // Places 2 mm apart miss the worst by at most 2.5 % of 2 mm.
    expect(Math.abs(most - fact.value)).toBeLessThan(0.025 * 0.002 + 1e-6);
  });

  it('is answered by a vertical curve of one longest vehicle a per cent', () => {
    const scene = broken(2.5);
    const [{ edit }] = factsOf(scene, 'grade-break');
    expect(edit).toEqual({ kind: 'vertical-curve', point: 1, lengthMm: 650 });
    if (edit === null) return;
    expect(factsOf(advised(scene, 'line', edit), 'grade-break')).toEqual([]);
  });
});

describe('a turnout on a vertical curve', () => {
  const turnout = { hand: 'left' as const, radiusMm: 800, gaugeMm: 16.5, frontMm: 20, heelMm: 40 };
  const scene = (atMm: number) =>
    railway([
      bareTrack(
        'main',
        [straight(6000)],
        [
          { atMm: 0, heightMm: 0 },
          { atMm: 3000, heightMm: 0, verticalCurveLengthMm: 1000 },
          { at: { endOf: 'track' }, heightMm: 75 },
        ],
      ),
      bareTrack('siding', [straight(600)], [{ at: { endOf: 'track' }, gradePercent: 0 }], {
        branchOf: 'main',
        atMm,
        towards: 'end',
        turnout,
      }),
    ]);

  it('does not lie flat: by the sagitta of the curve over its length', () => {
    const [fact] = factsOf(scene(2900), 'bent-turnout');
    expect(fact).toMatchObject({ trackId: 'main', branch: 'siding', weight: 'near', limit: 0 });
    const length = fact.to - fact.from;
    // Radius of the curve: 1000 mm over 2.5 % is 40 m.
    expect(fact.value).toBeCloseTo((length * length) / (8 * 40), 6);
    expect(fact.from).toBeCloseTo(2.9, 9);
  });

  it('is left alone off the curve', () => {
    expect(factsOf(scene(4000), 'bent-turnout')).toEqual([]);
  });

  it('lies flat once the grade point is moved away', () => {
    const bent = scene(2900);
    const [{ edit }] = factsOf(bent, 'bent-turnout');
    expect(edit?.kind).toBe('grade-point');
    if (edit === null) return;
    expect(factsOf(advised(bent, 'main', edit), 'bent-turnout')).toEqual([]);
  });
});

describe('the mouth of a helix', () => {
  const mouth = (radiusMm: number) =>
    railway([bareTrack('line', [straight(1500), { kind: 'helix', id: 'helix', radiusMm, turn: 'left', turns: 2 }])]);

  it('asks for the easement of the norm', () => {
    const [fact, ...more] = factsOf(mouth(600), 'missing-easement');
    expect(more).toEqual([]);
    // Source: NEM 113 (2016): √(24·9 mm·600 mm) = 360 mm.
    expect(fact.limit).toBeCloseTo(0.36, 9);
    expect(fact.chainage).toBeCloseTo(1.5, 9);
    expect(fact.edit).toEqual({ kind: 'ease', joins: [{ index: 1, lengthMm: 360 }] });
  });

  it('asks for none over 60 gauges, 990 mm in H0, or once it is there', () => {
    expect(factsOf(mouth(1000), 'missing-easement')).toEqual([]);
    const scene = mouth(600);
    const [{ edit }] = factsOf(scene, 'missing-easement');
    if (edit === null) throw new Error('an edit is proposed');
    expect(factsOf(advised(scene, 'line', edit), 'missing-easement')).toEqual([]);
  });
});
