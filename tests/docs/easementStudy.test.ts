import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { easementPicture } from '../../src/cli/studies/easementPicture.ts';
import { easementRows, withEasementTables } from '../../src/cli/studies/easementStudy.ts';
import type { EasementMeasure } from '../../src/sim/study/easements.ts';
import { bundledScene } from '../scene/sample.ts';
import { patience, solve } from '../sim/solved.ts';

const read = (path: string): string => readFileSync(new URL(`../../docs/${path}`, import.meta.url), 'utf8');
const scene = bundledScene('10-rushbeck-throat.json');

describe('docs/studies/easement.md', () => {
  let bend: readonly EasementMeasure[] = [];
  beforeAll(() => {
    bend = easementRows(scene, 's-bend');
  });
  const row = (kind: string, mm: number): EasementMeasure => {
    const found = bend.find((one) => one.kind === kind && Math.abs(one.length * 1e3 - mm) < 1e-9);
    if (found === undefined) throw new Error(`${kind} ${mm}`);
    return found;
  };

  it('has the tables and the picture that the study makes (npm run studies)', () => {
    const page = read('studies/easement.md');
    expect(withEasementTables(page, scene)).toBe(page);
    expect(easementPicture(scene)).toBe(read('pictures/easement.svg'));
  }, 60_000);

  it('agrees with what can be reckoned by hand', () => {
    // Shift L²/24R, nearly.
    expect(row('clothoid', 300).shift * 1e3).toBeCloseTo((300 * 300) / (24 * 600), 1);
    // Jerk v³/(R·L) where the easement is longer than bogies are apart; v³/(R·a), twice at the turn of an S, without one.
    expect(row('clothoid', 300).jerk).toBeCloseTo(0.027 / (0.6 * 0.3), 2);
    expect(row('none', 0).jerk).toBeCloseTo((2 * 0.027) / (0.6 * 0.186), 2);
    // Two like coaches at the turn of an S without easement: (L² - a²)/4R (handbook), for bodies less their buffers; a few per cent as radii are small.
    expect(row('none', 0).buffers * 1e3).toBeGreaterThan(12);
    expect(row('none', 0).buffers * 1e3).toBeLessThan((258 * 258 - 186 * 186) / 2400 + 0.5);
  });

  it.each([
    ['bare', -6.2],
    ['eased-100', -3.0],
    ['eased-200', 0.4],
    ['eased-300', 1.2],
    ['eased-450', 1.6],
  ])(
    'says of %s propelled what the run in the scene says',
    async (track, marginMm) => {
      const { worst } = await solve(scene, `${track}-propelled`);
      expect(worst('buffer-lock').margin * 1e3).toBeCloseTo(marginMm, 1);
    },
    patience,
  );
});
