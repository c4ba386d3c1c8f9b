import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounds, type Problem, parseScene, serialiseScene } from '../../src/scene/index.ts';
import { sceneSchema } from '../../src/scene/schema/schema.ts';
import { bundledFiles, bundledScene, bundledText, sample, sampleScene, sampleWith } from './sample.ts';

function problems(source: unknown): readonly Problem[] {
  const parsed = parseScene(source);
  return parsed.ok ? [] : parsed.problems;
}

describe('parseScene', () => {
  it('takes a sound scene as text and as a value, and fills nothing in', () => {
    expect(parseScene(JSON.stringify(sample))).toEqual({ ok: true, scene: sample });
    expect(parseScene(structuredClone(sample))).toEqual({ ok: true, scene: sample });
  });

  it('passes over a byte order mark', () => {
    expect(parseScene(`\uFEFF${JSON.stringify(sample)}`).ok).toBe(true);
  });

  it('names the place, what was found, what is allowed and an example', () => {
    expect(problems(sampleWith('tracks.0.alignment.1.radiusMm', -4))).toEqual([
      {
        path: 'tracks[0].alignment[1].radiusMm',
        found: '-4',
        allowed: 'a number from 0.01 to 200000: Radius of the track centreline, mm.',
        example: '600',
      },
    ]);
  });

  it.each([
    [
      'tracks.0.alignment.0.kind',
      'strait',
      'tracks[0].alignment[0].kind',
      'one of "straight", "arc", "helix", "transition"',
    ],
    ['tracks.0.alignment.1.turn', 'up', 'tracks[0].alignment[1].turn', 'one of "left", "right"'],
    ['tracks.0.alignment.1.angleDeg', 30, 'tracks[0].alignment[1]', 'either angleDeg or lengthMm'],
    ['tracks.0.alignment.1.lengthMm', undefined, 'tracks[0].alignment[1]', 'either angleDeg or lengthMm'],
    ['tracks.0.alignment', [], 'tracks[0].alignment', 'a list of 1 to 400 entries'],
    ['tracks.0.profile.1.at', { endOf: 'lead' }, 'tracks[0].profile[1]', 'either atMm or at'],
    ['tracks.0.supports.everyMm', 1, 'tracks[0].supports.everyMm', 'a number from 20 to 5000'],
    ['tracks.0.supports', 'many', 'tracks[0].supports', 'a list of 2 to 2000 entries, or an object with everyMm'],
    ['stock.0.drive', undefined, 'stock[0]', 'drive on a locomotive, and on nothing else'],
    ['stock.1.wheelbaseMm', 40, 'stock[1]', 'either wheelbaseMm or bogies'],
    ['stock.1.id', 'Two Words', 'stock[1].id', 'a short name of small letters, digits and hyphens'],
    ['trials.0.orders.0.setting', '50 %', 'trials[0].orders[0].setting', 'a number from -1 to 1'],
    ['trials.0.leading', null, 'trials[0].leading', 'one of "first", "last"'],
    ['trains.0.vehicles.1.count', 2.5, 'trains[0].vehicles[1].count', 'a whole number from 1 to 120'],
    ['name', '', 'name', 'text of 1 to 120 letters'],
  ])('refuses %s: %j', (path, value, where, allowed) => {
    const [first, ...more] = problems(sampleWith(path, value));
    expect(more).toEqual([]);
    expect(first.path).toBe(where);
    expect(first.allowed).toContain(allowed);
  });

  it('reports a misspelt field with the field that was meant', () => {
    expect(problems(sampleWith('tracks.0.alignment.1.raduisMm', 600))).toEqual([
      {
        path: 'tracks[0].alignment[1].raduisMm',
        found: 'a field that is not known here',
        allowed: 'only kind, id, radiusMm, turn, cantMm, angleDeg, lengthMm',
        example: '"radiusMm": 600',
      },
    ]);
  });

  it.each(['tracks', 'couplings', 'stock', 'trains', 'trials'] as const)(
    'shows how "%s" is meant with an example that would do',
    (field) => {
      const misspelt = problems(sampleWith(`${field}x`, [])).find(({ path }) => path === `${field}x`);
      const [, name, value] = /^"(\w+)": (.*)$/.exec(misspelt?.example ?? '') ?? [];
      expect(name).toBe(field);
      expect(sceneSchema.shape[field].safeParse(JSON.parse(value)).success).toBe(true);
    },
  );

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e308, -0.0001])(
    'refuses %f for a length',
    (value) => {
      const [first, ...more] = problems(sampleWith('tracks.0.alignment.0.lengthMm', value));
      expect(more).toEqual([]);
      expect(first.path).toBe('tracks[0].alignment[0].lengthMm');
    },
  );

  it('refuses a newer version kindly, whatever else the file holds', () => {
    const [first, ...more] = problems({ gradewright: 2, rooms: [] });
    expect(more).toEqual([]);
    expect(first.path).toBe('gradewright');
    expect(first.found).toContain('newer Gradewright');
    expect(first.allowed).toContain('nothing is lost');
  });

  it('keeps what it repeats from the file short', () => {
    const found = problems(sampleWith('trials.0.leading', 'x'.repeat(1000)))[0].found;
    expect(found.length).toBeLessThan(80);
  });

  it('tells at most twenty problems at once', () => {
    expect(
      problems(
        sampleWith(
          'stock',
          Array.from({ length: 150 }, () => 1),
        ),
      ),
    ).toHaveLength(20);
  });

  it.each([
    ['text that is not JSON', '{"gradewright": 1,'],
    ['too much text', ' '.repeat(bounds.text + 1)],
    ['JSON that nests without end', '['.repeat(100_000) + ']'.repeat(100_000)],
    ['more values than a scene has', JSON.stringify(Array.from({ length: bounds.values + 1 }, () => 0))],
    ['nothing', undefined],
    ['a number', 7],
    ['a list', []],
  ])('refuses %s', (_what, source) => {
    expect(problems(source)).toHaveLength(1);
  });

  it('refuses a value that goes round in circles', () => {
    const loop: Record<string, unknown> = structuredClone(sample);
    loop.room = loop;
    expect(problems(loop)).toHaveLength(1);
  });

  it('is not moved by keys that mean something to JavaScript', () => {
    const text = JSON.stringify(sample).replace('{', '{"__proto__":{"name":"x"},"constructor":1,');
    expect(problems(text).map((problem) => problem.path)).toEqual(['__proto__', 'constructor']);
  });

  it('never throws on any JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
        const parsed = parseScene(value);
        expect(parsed.ok).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  it('never throws on a scene with any part put elsewhere or exchanged, and says something where it refuses', () => {
    const scenes = bundledFiles.map((name) => JSON.parse(bundledText(name)) as unknown);
    const paths = scenes.map((scene) => [...pathsOf(scene)]);
    fc.assert(
      fc.property(
        fc.nat(),
        fc.nat(),
        fc.oneof(fc.jsonValue({ maxDepth: 2 }), fc.double({ noNaN: true }), fc.constant(undefined)),
        (whichScene, whichPath, value) => {
          const scene = whichScene % scenes.length;
          const path = paths[scene][whichPath % paths[scene].length];
          const parsed = parseScene(changed(scenes[scene], path, value));
          if (parsed.ok) return;
          expect(parsed.problems.length).toBeGreaterThan(0);
          for (const problem of parsed.problems) {
            expect(problem.found).not.toBe('');
            expect(problem.allowed).not.toBe('');
          }
        },
      ),
      { numRuns: 400 },
    );
  });
});

describe('serialiseScene', () => {
  it('comes back as the same scene', () => {
    for (const scene of [sampleScene(), ...bundledFiles.map(bundledScene)]) {
      expect(parseScene(serialiseScene(scene))).toEqual({ ok: true, scene });
    }
  });

  it('comes back as the same scene for any lengths, weights and heights', () => {
    const length = fc.double({ min: 500, max: 5000, noNaN: true });
    fc.assert(
      fc.property(
        length,
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.string({ minLength: 1, maxLength: 100 }),
        (mm, off, name) => {
          const source = sampleWith('tracks.0.alignment.0.lengthMm', 2000 + mm) as { name: string };
          source.name = name;
          const changedOff = source as unknown as { tracks: { supports: { off: { byMm: number }[] } }[] };
          // JSON knows no negative zero.
          changedOff.tracks[0].supports.off[0].byMm = off + 0;
          const parsed = parseScene(source);
          if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
          expect(parseScene(serialiseScene(parsed.scene))).toEqual(parsed);
        },
      ),
    );
  });

  it('ends with a newline and is indented, so that versions can be compared', () => {
    expect(serialiseScene(sampleScene())).toMatch(/^\{\n {2}"gradewright": 1,\n(.*\n)*\}\n$/);
  });
});

type Path = readonly (string | number)[];

function* pathsOf(value: unknown, path: Path = []): Generator<Path> {
  if (path.length > 0) yield path;
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value))
    yield* pathsOf(inner, [...path, Array.isArray(value) ? Number(key) : key]);
}

function changed(source: unknown, path: Path, value: unknown): unknown {
  const copy = structuredClone(source);
  let place = copy as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) place = place[key] as Record<string | number, unknown>;
  const last = path[path.length - 1];
  if (value === undefined) delete place[last];
  else place[last] = value;
  return copy;
}
