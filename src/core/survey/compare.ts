import { normalQuantile } from './distributions.ts';
import { falseAlarm } from './explain.ts';
import type { Survey, SurveyChange } from './types.ts';

/** Supports this near each other in two surveys are the same, m. */
const sameSupport = 1e-6;

/**
 * What changed from one survey to a later one of the same supports: the difference of the believed heights, with its
 * deviation (the two sets of readings are independent). Throws RangeError when the supports are not the same.
 */
export function compareSurveys(earlier: Survey, later: Survey): SurveyChange[] {
  const { supports } = earlier.input;
  const others = later.input.supports;
  if (supports.length !== others.length || supports.some((s, i) => Math.abs(s - others[i]) > sameSupport)) {
    throw new RangeError('Two surveys can be compared only when their supports are the same.');
  }
  const count = supports.length;
  const critical = normalQuantile(falseAlarm / count / 2);
  return supports.map((_, support) => {
    const change = later.belief.mean[support] - earlier.belief.mean[support];
    const at = support * count + support;
    const deviation = Math.sqrt(earlier.belief.covariance[at] + later.belief.covariance[at]);
    const statistic = deviation > 0 ? change / deviation : 0;
    return { support, change, deviation, statistic, significant: Math.abs(statistic) > critical };
  });
}
