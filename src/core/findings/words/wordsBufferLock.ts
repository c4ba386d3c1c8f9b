import type { Finding } from '../types.ts';
import { byStanding, causeOf, curveClause, loadClause, sentence } from './clauses.ts';
import { jointNumber, pairName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { type Naming, type Show, showPlace, showSmall } from './show.ts';

/** `on the reverse curve at 3.92 m`. */
function where(finding: Finding, show: Show): string {
  const place = `at ${showPlace(finding.chainage, show)}`;
  if (causeOf(finding, 'reverse-curve') !== undefined) return `on the reverse curve ${place}`;
  return causeOf(finding, 'curve-entry') === undefined ? place : `on the way into the curve ${place}`;
}

export const bufferLockWords: RiskWords = {
  title: 'Buffers',
  headline(finding, naming, show) {
    const joint = `joint ${jointNumber(naming, finding.subject)}`;
    const keeps = finding.governing === 'gap' ? 'stay apart' : 'keep their overlap';
    return sentence(
      byStanding(finding, {
        fails: `buffers lock at ${joint} ${where(finding, show)}`,
        undecided: `buffers may lock at ${joint} ${where(finding, show)}`,
        near: `buffers nearly lock at ${joint} ${where(finding, show)}`,
        passes: `buffers ${keeps}; ${joint} has least, at ${showPlace(finding.chainage, show)}`,
      }),
    );
  },
  cause: (finding, naming, show) =>
    sentence(finding.governing === 'gap' ? byGap(finding, naming, show) : byOverlap(finding, naming, show)),
};

/** ` in the reverse curve of 438 mm radius`, with its space before; empty on straight track. */
const onCurve = (finding: Finding, show: Show): string => {
  const curve = curveClause(finding, show);
  return curve === '' ? '' : ` ${curve}`;
};

/** What the overlap says where it is the greater of the two: how far the heads stand aside, and how much of each other they still cover. */
function byOverlap(finding: Finding, naming: Naming, show: Show): string {
  const aside = `heads of ${pairName(naming, finding.subject)} stand ${showSmall(finding.value, show)} aside${onCurve(finding, show)}`;
  if (finding.margin >= 0) return `${aside}, they overlap up to ${showSmall(finding.limit, show)}`;
  const load = loadClause(finding);
  return `${aside}, past their overlap of ${showSmall(finding.limit, show)}, and meet${load === '' ? '' : ` ${load}`}`;
}

/** Less of a gap than this goes without saying, m: it would read as nothing. */
const telling = 0.00001;

/** What the gap says where it is the greater of the two: how wide it stands, and how much of it a squeeze takes. */
function byGap(finding: Finding, naming: Naming, show: Show): string {
  const open = `${showSmall(Math.abs(finding.limit), show)} ${finding.limit < 0 ? 'pressed together' : 'apart'}`;
  const faces = `faces of ${pairName(naming, finding.subject)} stand ${open}${onCurve(finding, show)}`;
  const load = loadClause(finding);
  const takes =
    finding.value >= telling
      ? `, ${showSmall(finding.value, show)} of it goes${load === '' ? ' when they are pushed' : ` ${load}`}`
      : '';
  if (finding.margin < 0) return `${faces}${takes}: they meet with their overlap lost`;
  return `${faces}${takes}: while a gap is open heads cannot lock`;
}
