import {
  breakClause,
  causeOf,
  loadClause,
  pairName,
  routeClause,
  sentence,
  supportClause,
  verticalCurveClause,
} from './clauses.ts';
import type { RiskWords } from './riskWords.ts';
import { type Naming, type Show, showForce, showPlace, showSmall } from './show.ts';
import type { Finding } from './types.ts';

/** `, on support 14` where a support is to blame. */
function onSupport(finding: Finding): string {
  const cause = causeOf(finding, 'support-off');
  return cause === undefined ? '' : `, at support ${cause.support + 1}`;
}

/** How far apart two heads stand, and what put them there. */
function headsApart(finding: Finding, naming: Naming, show: Show): string {
  const apart = showSmall(finding.value, show);
  const holds = showSmall(finding.limit, show);
  const load = loadClause(finding);
  const cause = causeOf(finding, 'buff') ?? causeOf(finding, 'draft');
  const broken = breakClause(finding, show);
  // A blow belongs to the break that meets it, a steady force to the heads it bears on.
  const withBreak = cause?.sudden === true && broken !== '';
  const bears = load === '' || withBreak ? '' : ` ${load}`;
  const stand = `heads of ${pairName(naming, finding.subject)} stand ${apart} apart${bears}, ${holds} holds them`;
  const fitted = causeOf(finding, 'heads-differ');
  const clauses = [
    [supportClause(finding, show), withBreak ? `${broken} ${load}` : broken].filter((part) => part !== '').join(': '),
    verticalCurveClause(finding, show),
    fitted === undefined ? '' : `as fitted they differ by ${showSmall(fitted.by, show)}`,
  ].filter((part) => part !== '');
  return [stand, ...clauses].map(sentence).join(' ');
}

export const overrideWords: RiskWords = {
  title: 'Riding up',
  headline(finding, _naming, show) {
    const joint = `oint ${finding.subject + 1}`;
    const place = `${showPlace(finding.chainage, show)}${onSupport(finding)}`;
    const lifts = finding.governing === 'lift';
    if (finding.verdict === 'fails')
      return lifts ? `J${joint} is lifted at ${place}.` : `J${joint} rides up at ${place}.`;
    if (finding.verdict === 'near') {
      return lifts ? `J${joint} is nearly lifted at ${place}.` : `J${joint} nearly rides up at ${place}.`;
    }
    return `No joint rides up; j${joint} comes nearest, at ${place}.`;
  },
  cause(finding, naming, show) {
    if (finding.governing !== 'lift') return headsApart(finding, naming, show);
    const load = loadClause(finding);
    const lifts = `between ${pairName(naming, finding.subject)} the leaning faces lift with ${showForce(finding.value)}`;
    return sentence(
      `${lifts}${load === '' ? '' : ` ${load}`}, ${showForce(finding.limit)} of weight holds the end down`,
    );
  },
};

export const partingWords: RiskWords = {
  title: 'Hold in draft',
  headline(finding, _naming, show) {
    const joint = `oint ${finding.subject + 1}`;
    const place = `${showPlace(finding.chainage, show)}${onSupport(finding)}`;
    if (finding.verdict === 'fails') return `J${joint} parts at ${place}.`;
    if (finding.verdict === 'near') return `J${joint} nearly parts at ${place}.`;
    return `Every joint holds; j${joint} holds by least, at ${place}.`;
  },
  cause(finding, naming, show) {
    if (finding.governing !== 'release') return headsApart(finding, naming, show);
    const pulled = `${pairName(naming, finding.subject)} are pulled with ${showForce(finding.value)}`;
    const route = routeClause(finding, show);
    return sentence(`${pulled}${route === '' ? '' : ` ${route}`}, the coupling lets go at ${showForce(finding.limit)}`);
  },
};
