import { breakClause, byStanding, sentence, supportClause, verticalCurveClause } from './clauses.ts';
import { vehicleName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { showPlace, showSmall } from './show.ts';

export const barLiftWords: RiskWords = {
  title: 'Rigid bars',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    return sentence(
      byStanding(finding, {
        fails: `the coupling bars hold ${vehicle} off the rail ${place}`,
        undecided: `the coupling bars may hold ${vehicle} off the rail ${place}`,
        near: `the coupling bars nearly hold ${vehicle} off the rail ${place}`,
        passes: `no coupling bar lifts a vehicle; ${vehicle} comes nearest ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const hangs = `its bars tilt no further, so a running gear of ${vehicle} hangs ${showSmall(finding.value, show)} over the rail`;
    const heights = [supportClause(finding, show), breakClause(finding, show)].filter((part) => part !== '').join(': ');
    return [
      `${hangs}, flanges guide up to ${showSmall(finding.limit, show)}`,
      heights,
      verticalCurveClause(finding, show),
    ]
      .filter((part) => part !== '')
      .map(sentence)
      .join(' ');
  },
};
