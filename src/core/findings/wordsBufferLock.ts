import { causeOf, curveClause, loadClause, pairName, sentence } from './clauses.ts';
import type { RiskWords } from './riskWords.ts';
import { type Show, showPlace, showSmall } from './show.ts';
import type { Finding } from './types.ts';

/** `on the reverse curve at 3.92 m`. */
function where(finding: Finding, show: Show): string {
  const place = `at ${showPlace(finding.chainage, show)}`;
  if (causeOf(finding, 'reverse-curve') !== undefined) return `on the reverse curve ${place}`;
  return causeOf(finding, 'curve-entry') === undefined ? place : `on the way into the curve ${place}`;
}

export const bufferLockWords: RiskWords = {
  title: 'Buffer overlap',
  headline(finding, _naming, show) {
    const joint = `joint ${finding.subject + 1}`;
    if (finding.verdict === 'fails') return `Buffers lock at ${joint} ${where(finding, show)}.`;
    if (finding.verdict === 'near') return `Buffers nearly lock at ${joint} ${where(finding, show)}.`;
    return `Buffers keep their overlap; ${joint} keeps least, at ${showPlace(finding.chainage, show)}.`;
  },
  cause(finding, naming, show) {
    const curve = curveClause(finding, show);
    const aside = `heads of ${pairName(naming, finding.subject)} stand ${showSmall(finding.value, show)} aside`;
    return sentence(`${aside}${curve === '' ? '' : ` ${curve}`}${left(finding, show)}`);
  },
};

/** What is left of overlap and gap, and what closes it. */
function left(finding: Finding, show: Show): string {
  const overlap = finding.limit - finding.value;
  if (overlap >= 0) {
    const gap = finding.governing === 'gap' ? ` and ${showSmall(finding.margin, show)} of gap` : '';
    return ` and keep ${showSmall(overlap, show)} of overlap${gap}`;
  }
  const lost = `, ${showSmall(-overlap, show)} past their overlap`;
  if (finding.margin >= 0) return `${lost}, but ${showSmall(finding.margin, show)} of gap keeps their faces apart`;
  const load = loadClause(finding);
  return `${lost}, and meet${load === '' ? '' : ` ${load}`}`;
}
