import { describe, expect, it } from 'vitest';
import { importedScene, parseScene, serialiseScene, shapeScales } from '../../../src/scene/index.ts';

const scale = shapeScales.find(({ name }) => name === 'HO') ?? shapeScales[0];
const options = { toleranceMm: 1, scale };

describe('a railway from a file', () => {
  it('is a scene that can be read, along the longest line, as drawn', () => {
    const svg = `<svg width="4000mm" viewBox="0 0 4000 3000"><g transform="translate(500 2500)">
      <path d="M0 0h1500a600 600 0 0 0 600-600v-1200"/><path d="M0 9h100"/></g></svg>`;
    const imported = importedScene('room/plan.svg', svg, options);
    expect(imported.from).toEqual({ kind: 'drawn' });
    expect(imported.linesLeft).toBe(1);
    expect(imported.distanceMm).toBeLessThan(1e-6);
    const [track] = imported.scene.tracks;
    expect(track.alignment.map(({ kind }) => kind)).toEqual(['straight', 'arc', 'straight']);
    expect(imported.scene.name).toBe('From plan.svg');
    expect(imported.scene.trials).toHaveLength(4);
    expect(parseScene(serialiseScene(imported.scene)).ok).toBe(true);
  });

  it('has the heights that a table gives, and its place in the room', () => {
    const rows = Array.from({ length: 41 }, (_, i) => `${500 + i * 100},500,${20 + i * 2}`);
    const { scene, from, heightDistanceMm } = importedScene('m.csv', `x,y,z\n${rows.join('\n')}`, options);
    expect(from).toEqual({ kind: 'fitted', places: 41 });
    expect(scene.tracks[0].start).toMatchObject({ xMm: 500, yMm: 500 });
    expect(heightDistanceMm).toBeLessThan(0.5);
    expect(scene.tracks[0].profile).toHaveLength(2);
    // 2 mm in 100 mm over 4 m: 80 mm up from 20 mm.
    expect(scene.tracks[0].profile[1].heightMm).toBeCloseTo(100, 0);
  });

  it('is refused where there is no line, or one too short for a train', () => {
    expect(() => importedScene('a.csv', 'nothing', options)).toThrow('There is no line in a.csv');
    expect(() => importedScene('a.csv', '0,0\n100,0', options)).toThrow('Is the unit of the file what was meant?');
    expect(() => importedScene('a.txt', '0,0', options)).toThrow('no .csv, .svg or .dxf');
  });
});
