import { describe, expect, it } from 'vitest';
import { bestRoute } from '../../../src/cli/best/bestRoute.ts';
import { bestRouteReportSchema } from '../../../src/cli/best/bestRouteReport.ts';
import { BadInput } from '../../../src/cli/exitCodes.ts';
import { loopScene, way } from '../../sim/study/route/loop.ts';

const vary = [`${way}/first/radiusMm=300..500..100`];
const solve = [`${way}/up/lengthMm`, `${way}/out/lengthMm`];

describe('best with numbers to choose', { timeout: 120_000 }, () => {
  it('says the best in text, JSON and CSV that agree', async () => {
    const { report, text, csv, exitCode } = await bestRoute(loopScene(), {
      ...{ vary, solve, hold: [], heights: 'own', trial: ['up'] },
    });
    expect(bestRouteReportSchema.parse(report)).toEqual(report);
    expect(exitCode).toBe(0);
    expect(report.certainty).toBe('every-setting');
    const [route] = report.routes;
    // By hand (tests/sim/study/route/loop.ts): 500 mm, and the straight between then 500 mm long.
    expect(route.settings[0]).toEqual({ at: `${way}/first/radiusMm`, to: 500 });
    expect(route.settings[1].to).toBeCloseTo(500, 6);
    expect(route.fullShare).not.toBeNull();
    expect(text).toContain('proven by looking at all 3 settings');
    expect(text).toContain(`${way}/first/radiusMm = 500`);
    const [columns, row] = csv.trim().split('\n');
    expect(columns.split(',')[0]).toBe(`${way}/first/radiusMm`);
    expect(row.split(',')[0]).toBe('500');
    expect(Number(row.split(',')[columns.split(',').indexOf('rulingPercent')])).toBe(route.rulingPercent);
  });

  it('exits with 1 and says what is in the way when nothing keeps the limits', async () => {
    const options = { vary, solve, hold: [], heights: 'own', leastRadius: '450' };
    const { exitCode, text } = await bestRoute(loopScene(), options);
    expect(exitCode).toBe(1);
    // The second turn stays at 400 mm whatever the first is.
    expect(text).toContain('In the way: least radius (3)');
  });

  it.each([
    [{ vary: [`${way}/first/radiusMm=300..500..900`] }, /step is above 0/],
    [{ vary: [`${way}/first/radius=300..500`] }, /no number at/],
    [{ aim: 'speed' }, /grade or margin/],
    [{ aim: 'grade', front: true }, /exclude/],
    [{ room: '3800' }, /width and a depth/],
    [{ looks: '0' }, /looks/],
    [{ heights: 'new' }, /best or own/],
    [{ heights: 'best', vary: ['tracks/line/profile/2/heightMm=40..80'] }, /find it itself/],
  ] as const)('refuses %o', async (more, words) => {
    const asked = bestRoute(loopScene(), { vary, solve, hold: [], ...more });
    await expect(asked).rejects.toThrow(BadInput);
    await expect(bestRoute(loopScene(), { vary, solve, hold: [], ...more })).rejects.toThrow(words);
  });
});
