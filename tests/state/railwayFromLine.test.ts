import { describe, expect, it } from 'vitest';
import { parseScene } from '../../src/scene/index.ts';
import { railwayFromLine } from '../../src/state/index.ts';

const svg = (inner: string) => `<svg width="5000mm" viewBox="0 0 5000 3000">${inner}</svg>`;

describe('a line dropped on the window', () => {
  it('is a scene file of a railway along it', () => {
    const made = railwayFromLine('plan.svg', svg('<path d="M100 2000h1500a600 600 0 0 0 600-600v-1200"/>'));
    expect(made?.name).toBe('plan.json');
    const parsed = parseScene(made?.text ?? '');
    expect(parsed.ok && parsed.scene.tracks[0].alignment.map(({ kind }) => kind)).toEqual([
      'straight',
      'arc',
      'straight',
    ]);
  });

  it('is told from a table of readings by its columns', () => {
    expect(railwayFromLine('levels.csv', 'support,grade\n1,2.5\n')).toBeNull();
    expect(railwayFromLine('scene.json', '{}')).toBeNull();
    expect(railwayFromLine('line.csv', '# taped\nx (m),y (m)\n0,0\n2,0\n4,0\n')?.name).toBe('line.json');
  });

  it('is refused in words', () => {
    expect(() => railwayFromLine('plan.svg', svg(''))).toThrow('There is no line in plan.svg');
  });
});
