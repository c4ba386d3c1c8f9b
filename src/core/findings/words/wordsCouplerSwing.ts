import { byStanding, curveClause, sentence } from './clauses.ts';
import { jointNumber, pairName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { showAngle, showPlace } from './show.ts';

export const couplerSwingWords: RiskWords = {
  title: 'Coupler swing',
  headline(finding, naming, show) {
    const joint = `joint ${jointNumber(naming, finding.subject)}`;
    const place = `at ${showPlace(finding.chainage, show)}`;
    return sentence(
      byStanding(finding, {
        fails: `${joint} swings past its stop ${place}`,
        undecided: `${joint} may swing past its stop ${place}`,
        near: `${joint} nearly swings to its stop ${place}`,
        passes: `couplings swing free; ${joint} swings furthest, ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const swings = `between ${pairName(naming, finding.subject)} the coupling swings ${showAngle(finding.value)}`;
    const curve = curveClause(finding, show);
    const stop = finding.margin < 0 ? ', then the body takes the load sideways' : '';
    return sentence(`${swings}${curve === '' ? '' : ` ${curve}`}, ${showAngle(finding.limit)} is free${stop}`);
  },
};
