import { sentence, supportClause, vehicleName } from './clauses.ts';
import type { RiskWords } from './riskWords.ts';
import { showPlace, showSmall } from './show.ts';

export const headroomWords: RiskWords = {
  title: 'Headroom',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    if (finding.verdict === 'fails') return sentence(`${vehicle} strikes the deck above ${place}`);
    if (finding.verdict === 'near') return sentence(`${vehicle} barely clears the deck above ${place}`);
    return `There is headroom; ${vehicle} has least ${place}.`;
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
