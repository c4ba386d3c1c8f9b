import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { section, sectionCsv, sectionText } from '../../src/cli/section.ts';
import { parseScene } from '../../src/scene/index.ts';

it('the section of a track tells where vehicles stand clear of its turnouts, and of the one it begins with', () => {
  const parsed = parseScene(readFileSync(new URL('../../scenes/11-curlew-throat.json', import.meta.url), 'utf8'));
  if (!parsed.ok) throw new Error('the scene does not parse');
  const report = section(parsed.scene, 'up', '3m');
  const [short, long] = report.turnouts ?? [];
  // 40 mm to the next road: never the 53 mm that the norm gives in 4 mm scale.
  expect(short?.branch).toBe('short-up');
  expect(short?.clearFromMm).toBeUndefined();
  expect(short?.hitUpToMm).toBeGreaterThan(1800);
  expect(long?.clearFromMm).toBeGreaterThan(long?.hitUpToMm ?? Number.NaN);
  expect(long?.spacingMm).toBeCloseTo(53, 9);
  expect(sectionText(report)).toMatch(/^Stands clear of the turnout to long-up from 28\d\d mm, away from it/m);
  expect(sectionText(report)).toMatch(/^Nothing stands clear of the turnout to short-up by the norm/m);
  expect(sectionCsv(report).split('\n')[0]).toMatch(/^chainageMm,/);
  expect(section(parsed.scene, 'long-up', '1m').turnouts?.[0]?.main).toBe('up');
});
