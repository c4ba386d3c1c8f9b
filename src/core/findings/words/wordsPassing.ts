import { byStanding, curveClause, sentence } from './clauses.ts';
import { vehicleName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { showPlace, showSmall } from './show.ts';

export const passingWords: RiskWords = {
  title: 'Side clearance',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} fouls a train on the track beside ${place}`,
        undecided: `${vehicle} may foul a train on the track beside ${place}`,
        near: `${vehicle} barely clears a train on the track beside ${place}`,
        passes: `trains pass each other; ${vehicle} comes nearest ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const curve = curveClause(finding, show);
    const stands = `${vehicle} stands ${showSmall(finding.limit, show)} from the middle of the track beside`;
    const takes = `a train there takes ${showSmall(finding.value, show)} to this side`;
    const apart = finding.margin < 0 ? [`the tracks want ${showSmall(-finding.margin, show)} more between them`] : [];
    return [`${stands}${curve === '' ? '' : ` ${curve}`}, ${takes}`, ...apart].map(sentence).join(' ');
  },
};
