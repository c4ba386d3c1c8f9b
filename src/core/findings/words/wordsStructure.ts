import { byStanding, curveClause, sentence } from './clauses.ts';
import { vehicleName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { showPlace, showSmall } from './show.ts';

export const structureWords: RiskWords = {
  title: 'Clear of structures',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    const what = finding.governing === 'lintel' ? 'what spans the track' : 'what stands beside the track';
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} strikes ${what} ${place}`,
        undecided: `${vehicle} may strike ${what} ${place}`,
        near: `${vehicle} barely clears ${what} ${place}`,
        passes: `nothing is struck; ${vehicle} comes nearest, ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const curve = curveClause(finding, show);
    const vehicle = vehicleName(naming, finding.subject);
    const over = finding.governing === 'lintel';
    const clear = `there is ${showSmall(finding.limit, show)} ${over ? 'over the rail' : 'to its side'}`;
    const takes = over ? 'takes' : 'is half as wide,';
    return sentence(
      `${clear}${curve === '' ? '' : ` ${curve}`}, ${vehicle} ${takes} ${showSmall(finding.value, show)}`,
    );
  },
};
