import { breakClause, sentence, supportClause, vehicleName, verticalCurveClause } from './clauses.ts';
import type { RiskWords } from './riskWords.ts';
import { type Show, showPlace, showSmall } from './show.ts';
import type { Finding } from './types.ts';

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
    const axle = finding.governing === 'end-axle' ? 'an end axle' : 'a middle axle';
    if (finding.verdict === 'fails') return sentence(`${vehicle} lifts ${axle} clear of the rail ${place}`);
    if (finding.verdict === 'near') return sentence(`${vehicle} nearly lifts ${axle} clear of the rail ${place}`);
    return `Every wheel keeps to the rail; ${vehicle} lifts one most ${place}.`;
  },
  cause(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const rises = `its wheels stand ${showSmall(finding.value, show)} off the rail`;
    const frame =
      finding.governing === 'end-axle'
        ? `the rigid frame of ${vehicle} rocks over a middle axle and at one end ${rises}`
        : `the rigid frame of ${vehicle} bridges the dip and under its middle ${rises}`;
    return withHeights(`${frame}, flanges guide up to ${showSmall(finding.limit, show)}`, finding, show);
  },
};

export const groundingWords: RiskWords = {
  title: 'Underside',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    if (finding.verdict === 'fails') return sentence(`${vehicle} grounds on the rail ${place}`);
    if (finding.verdict === 'near') return sentence(`${vehicle} nearly grounds on the rail ${place}`);
    return `Nothing grounds; ${vehicle} comes lowest ${place}.`;
  },
  cause(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const part = finding.governing === 'overhang' ? 'an overhang' : 'the middle';
    const rises = `the rail rises ${showSmall(finding.value, show)} under ${part} of ${vehicle}`;
    return withHeights(`${rises}, its underside is ${showSmall(finding.limit, show)} up`, finding, show);
  },
};
