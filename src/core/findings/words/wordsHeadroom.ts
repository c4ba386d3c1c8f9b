import { byStanding, sentence, supportClause } from './clauses.ts';
import { vehicleName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { showPlace, showSmall } from './show.ts';

export const headroomWords: RiskWords = {
  title: 'Headroom',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} strikes the deck above ${place}`,
        undecided: `${vehicle} may strike the deck above ${place}`,
        near: `${vehicle} barely clears the deck above ${place}`,
        passes: `there is headroom; ${vehicle} has least ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const clear = `the deck above leaves ${showSmall(finding.limit, show)} over the rail`;
    const takes = `${vehicleName(naming, finding.subject)} takes ${showSmall(finding.value, show)}`;
    return [`${clear}, ${takes}`, supportClause(finding, show)]
      .filter((part) => part !== '')
      .map(sentence)
      .join(' ');
  },
};
