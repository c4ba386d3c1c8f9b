import type { Finding } from '../types.ts';
import { breakClause, byStanding, sentence, supportClause, verticalCurveClause } from './clauses.ts';
import { vehicleName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { type Show, showPlace, showSmall } from './show.ts';

/** What the vehicle does, then what in the track's heights made it. */
function withHeights(first: string, finding: Finding, show: Show): string {
  const heights = [supportClause(finding, show), breakClause(finding, show)].filter((part) => part !== '').join(': ');
  return [first, heights, verticalCurveClause(finding, show)]
    .filter((part) => part !== '')
    .map(sentence)
    .join(' ');
}

export const axleLiftWords: RiskWords = {
  title: 'Wheels on the rail',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    const { governing } = finding;
    const axle = governing === 'corner' ? 'a wheel' : governing === 'end-axle' ? 'an end axle' : 'a middle axle';
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} lifts ${axle} clear of the rail ${place}`,
        undecided: `${vehicle} may lift ${axle} clear of the rail ${place}`,
        near: `${vehicle} nearly lifts ${axle} clear of the rail ${place}`,
        passes: `every wheel keeps to the rail; ${vehicle} lifts one most ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const rises = `its wheels stand ${showSmall(finding.value, show)} off the rail`;
    if (finding.governing === 'corner') {
      const hangs = `where the cant runs in or out one wheel of ${vehicle} hangs ${showSmall(finding.value, show)} off the rail`;
      return sentence(`${hangs}, flanges guide up to ${showSmall(finding.limit, show)}`);
    }
    const frame =
      finding.governing === 'end-axle'
        ? `a rigid wheelbase of ${vehicle} rocks over a middle axle and at one end ${rises}`
        : `a rigid wheelbase of ${vehicle} bridges the dip and under its middle ${rises}`;
    return withHeights(`${frame}, flanges guide up to ${showSmall(finding.limit, show)}`, finding, show);
  },
};

export const groundingWords: RiskWords = {
  title: 'Underside',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} grounds on the rail ${place}`,
        undecided: `${vehicle} may ground on the rail ${place}`,
        near: `${vehicle} nearly grounds on the rail ${place}`,
        passes: `nothing grounds; ${vehicle} comes lowest ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const part = finding.governing === 'overhang' ? 'an overhang' : 'the middle';
    const rises = `the rail rises ${showSmall(finding.value, show)} under ${part} of ${vehicle}`;
    return withHeights(`${rises}, its underside is ${showSmall(finding.limit, show)} up`, finding, show);
  },
};
