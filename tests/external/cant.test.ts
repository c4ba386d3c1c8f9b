import { describe, expect, it } from 'vitest';
import { railCentres } from '../../src/core/track/index.ts';

describe('cant is counted between the middles of the rail heads', () => {
  // Permanent way practice: cant is "measured at centerline of the rail heads" (NR/L2/TRK2049, quoted on pwayblog.com, "Cant and Cant Deficiency"), and
  // equilibrium cant is 11.82 V²/R, mm, km/h, m. There v²/R = g·E/S, so 11.82 = S/(3.6²·g), with S on standard gauge.
  const printed = 11.82;

  it('as the 11.82 of equilibrium cant has it, within what a model rail head is broader to scale', () => {
    const apart = (railCentres(1.435) * 1000) / (3.6 * 3.6 * 9.81);
    // A head of 1.0 mm on 16.5 mm is 87 mm full size; full-size heads are 65 to 75 mm broad (common practice): 22 mm of 1502 mm are 1.5 %.
    expect(apart / printed).toBeGreaterThan(1);
    expect(apart / printed).toBeLessThan(1.015);
    // Over the bare gauge it would be 4.5 % short.
    expect(1435 / (3.6 * 3.6 * 9.81) / printed).toBeLessThan(0.96);
  });

  it('so 17.5 mm apart in H0', () => {
    expect(railCentres(0.0165)).toBeCloseTo(0.0175, 15);
  });
});
