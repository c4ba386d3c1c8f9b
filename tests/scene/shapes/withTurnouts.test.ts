import { describe, expect, it } from 'vitest';
import { trackPoint } from '../../../src/core/track/index.ts';
import { shapeScales, usualValues } from '../../../src/scene/index.ts';
import { compileScene, compileTrial, runTrial } from '../../../src/sim/index.ts';
import { scaleNamed, shapeNamed } from './named.ts';

/** Places are told apart beyond a micrometre. */
const micrometre = 1e-6;

describe('a dog-bone', () => {
  const made = shapeNamed('dog-bone').make(scaleNamed('HO'), {
    riseMm: 80,
    radiusMm: 600,
    gradePercent: 2.5,
    roads: 3,
    lowMm: 20,
  });
  const line = compileScene(made.scene).tracks.get('dog-bone');
  if (line === undefined) throw new Error('no line');

  it('closes on itself', () => {
    const [start, end] = [trackPoint(line, 0), trackPoint(line, line.length)];
    expect(Math.hypot(end.x - start.x, end.y - start.y, end.z - start.z)).toBeLessThan(micrometre);
    expect(Math.abs(Math.cos(end.heading - start.heading) - 1)).toBeLessThan(micrometre);
  });

  it('has lines 46 mm apart, and its loops at the heights they were asked for', () => {
    // Source of 46 mm: NEM 112, in a club's print.
    const points = Array.from({ length: 2000 }, (_, k) => trackPoint(line, (line.length * k) / 2000));
    const middle = points.filter(({ heading }) => Math.abs(Math.sin(heading)) < 1e-6).map(({ y }) => y);
    expect(Math.max(...middle) - Math.min(...middle)).toBeCloseTo(0.046, 6);
    expect(Math.min(...points.map(({ z }) => z))).toBeCloseTo(0.02, 6);
    expect(Math.max(...points.map(({ z }) => z))).toBeCloseTo(0.1, 6);
  });

  it('keeps its storage roads clear of the line that climbs beside them', () => {
    // Half a formation of 70 mm (NEM 122) and half a structure gauge of 48 mm (NEM 102).
    const road = compileScene(made.scene).tracks.get('road-1');
    const end = road && trackPoint(road, road.length);
    expect(trackPoint(line, 1).y - (end?.y ?? 0)).toBeGreaterThanOrEqual(0.059 - micrometre);
  });

  it('is refused where trains in storage would not pass under the upper loop, with the rise that would do', () => {
    // 59 mm clear of NEM 102 and 17 mm of deck.
    expect(() =>
      shapeNamed('dog-bone').make(scaleNamed('HO'), { riseMm: 60, radiusMm: 600, gradePercent: 5, roads: 8 }),
    ).toThrow(/reach under the upper loop.*a rise of 76 mm/);
  });

  it('is refused where the radius leaves no room to come back beside itself', () => {
    expect(() => shapeNamed('dog-bone').make(scaleNamed('HO'), { radiusMm: 400 })).toThrow(
      /400 mm is too tight to join lines 46 mm apart/,
    );
  });
});

describe('a throat', () => {
  const made = shapeNamed('throat').make(scaleNamed('HO'), { roads: 4, oneIn: 6, riseMm: 50, gradePercent: 2.5 });
  const { tracks } = compileScene(made.scene);
  const endOf = (id: string) => {
    const track = tracks.get(id);
    if (track === undefined) throw new Error(id);
    return trackPoint(track, track.length);
  };

  it.each([
    ['inwards', 'inner'],
    ['outwards', 'outer'],
  ])('leads %s onto the %s line, along it', (crossover, main) => {
    const end = endOf(crossover);
    expect(Math.abs(end.y - endOf(main).y)).toBeLessThan(micrometre);
    expect(Math.abs(end.heading)).toBeLessThan(micrometre);
  });

  it('has turnouts of 1 in 6 with the largest radius there is', () => {
    // atan(1/6) is 9.4623 degrees; 16.5/(1 - cos) less half the gauge is 1204.5 mm.
    expect(made.scene.tracks.find(({ id }) => id === 'inwards')?.start).toMatchObject({
      turnout: { radiusMm: 1204, crossing: { oneIn: 6 } },
    });
    const onLadder = tracks.get('road-2');
    if (onLadder === undefined) throw new Error('no road 2');
    expect((trackPoint(onLadder, 0).heading * 180) / Math.PI).toBeCloseTo(-9.4623, 4);
  });

  it('has roads 52 mm apart that end in one line and each take the train', () => {
    // Source of 52 mm: NEM 112, in a club's print. The usual train is 850 mm long.
    const ends = [1, 2, 3, 4].map((road) => endOf(`road-${road}`));
    for (const [index, end] of ends.entries()) {
      expect(end.x).toBeCloseTo(endOf('inner').x, 6);
      if (index > 0) expect(ends[index - 1].y - end.y).toBeCloseTo(0.052, 6);
    }
    expect(tracks.get('road-3')?.length).toBeGreaterThan(0.85 + 0.26);
  });

  it('makes its roads wider apart than the turnouts of its ladder need, in every scale', () => {
    for (const scale of shapeScales) {
      for (const oneIn of [4, 5, 6, 8, 10, 12]) {
        expect(() => shapeNamed('throat').make(scale, { oneIn, roads: 8 })).not.toThrow();
      }
    }
  });
});

describe('a switchback', () => {
  const switchback = shapeNamed('switchback');
  const values = { riseMm: 220, legs: 3, gradePercent: 2.5, wallMm: 7000, lowMm: 0 };
  const made = switchback.make(scaleNamed('HO'), values);
  const { tracks } = compileScene(made.scene);

  it('fills the wall, leg above leg, 59 mm one behind the other', () => {
    // Half a formation of 70 mm (NEM 122) and half a structure gauge of 48 mm (NEM 102).
    const all = [...tracks.values()].map((track) =>
      Array.from({ length: 500 }, (_, k) => trackPoint(track, (track.length * k) / 499)),
    );
    const along = all.flat().map(({ x }) => x);
    expect(Math.max(...along) - Math.min(...along)).toBeCloseTo(7, 6);
    const ends = all.map((points) => points[499]);
    expect(ends[0].y - ends[1].y).toBeCloseTo(0.059, 6);
    expect(ends[1].y - ends[2].y).toBeCloseTo(0.059, 6);
    expect(ends.map(({ z }) => z)).toEqual(ends.map(({ z }) => z).toSorted((a, b) => a - b));
  });

  it('takes each train past the turnout before it sets back: 850 mm and a tenth', () => {
    const turnouts = made.scene.tracks.flatMap(({ start }) => ('branchOf' in start ? [start] : []));
    for (const { branchOf, atMm } of turnouts) {
      expect((tracks.get(branchOf)?.length ?? 0) * 1000 - atMm).toBeGreaterThanOrEqual(850 * 1.1 - micrometre);
    }
  });

  it('is gentler in three legs than in two, and says how long a wall it needs', () => {
    const two = switchback.make(scaleNamed('HO'), { ...values, legs: 2, gradePercent: 5 });
    expect(made.promise.gradePercent).toBeLessThan(two.promise.gradePercent);
    expect(() => switchback.make(scaleNamed('HO'), { ...values, wallMm: 5000 })).toThrow(
      /220 mm at 2.5 % in 3 legs want a wall of 6\d\d0 mm/,
    );
  });
});

describe.each(['switchback', 'dog-bone', 'throat'])('%s', (id) => {
  const made = shapeNamed(id).make(scaleNamed('HO'), usualValues(shapeNamed(id), scaleNamed('HO')));
  const compiled = compileScene(made.scene);
  const there = made.scene.trials.filter((_, index) => index % 4 < 2);
  it.each(there.map((trial) => [trial.name, trial.id]))(
    'as proposed in H0: %s arrives',
    async (_name, trialId) => {
      const { run, findings } = await runTrial(compileTrial(compiled, trialId));
      expect(run.events.at(-1)?.kind).toBe('arrived');
      expect(findings.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
    },
    60_000,
  );
});
