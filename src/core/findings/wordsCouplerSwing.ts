import { curveClause, pairName, sentence } from './clauses.ts';
import type { RiskWords } from './riskWords.ts';
import { showAngle, showPlace } from './show.ts';

export const couplerSwingWords: RiskWords = {
  title: 'Coupler swing',
  headline(finding, _naming, show) {
    const joint = `oint ${finding.subject + 1}`;
    const place = showPlace(finding.chainage, show);
    if (finding.verdict === 'fails') return `J${joint} swings past its stop at ${place}.`;
    if (finding.verdict === 'near') return `J${joint} nearly swings to its stop at ${place}.`;
    return `Couplings swing free; j${joint} swings furthest, at ${place}.`;
  },
  cause(finding, naming, show) {
    const swings = `between ${pairName(naming, finding.subject)} the coupling swings ${showAngle(finding.value)}`;
    const curve = curveClause(finding, show);
    const stop = finding.margin < 0 ? ', then the body takes the load sideways' : '';
    return sentence(`${swings}${curve === '' ? '' : ` ${curve}`}, ${showAngle(finding.limit)} is free${stop}`);
  },
};
