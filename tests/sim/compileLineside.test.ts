import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScene } from '../../src/scene/index.ts';
import { compileScene, compileTrial } from '../../src/sim/index.ts';

const file = JSON.parse(readFileSync(new URL('../../scenes/04-kestrel-sidings.json', import.meta.url), 'utf8'));
const track: string = file.trials[0].track;
const withLineside = (lineside: unknown[]) => parseScene({ ...file, lineside });

describe('things beside the line', () => {
  it('become prisms: two walls and a lintel of a portal, pieces of 10 mm of a wall', () => {
    const parsed = withLineside([
      { kind: 'portal', name: 'Mouth', track, atMm: 300, widthMm: 60, heightMm: 55 },
      { kind: 'wall', name: 'Platform', track, fromMm: 100, toMm: 200, side: 'right', distanceMm: 24, heightMm: 12 },
    ]);
    expect(parsed.ok).toBe(true);
    if (!parsed.ok) return;
    const { structures } = compileTrial(compileScene(parsed.scene), file.trials[0].id).surroundings;
    expect(structures?.map(({ name }) => name)).toEqual([...Array(3).fill('Mouth'), ...Array(10).fill('Platform')]);
    const lintel = structures?.[2];
    expect((lintel?.top ?? 0) - (lintel?.bottom ?? 0)).toBeCloseTo(0.01, 9);
  });

  it('are refused on a track that is not there, beyond its end, or ending before they begin', () => {
    const wall = {
      kind: 'wall',
      name: 'Wall',
      track,
      fromMm: 100,
      toMm: 200,
      side: 'left',
      distanceMm: 24,
      heightMm: 12,
    };
    for (const [change, path] of [
      [{ track: 'nowhere' }, 'lineside[0].track'],
      [{ toMm: 190_000 }, 'lineside[0].toMm'],
      [{ fromMm: 300 }, 'lineside[0].toMm'],
    ] as const) {
      const parsed = withLineside([{ ...wall, ...change }]);
      expect(parsed.ok ? [] : parsed.problems.map((problem) => problem.path)).toContain(path);
    }
  });
});
