import type { Finding } from '../types.ts';
import {
  breakClause,
  byStanding,
  causeOf,
  curveClause,
  loadClause,
  routeClause,
  sentence,
  supportClause,
  verticalCurveClause,
} from './clauses.ts';
import { jointNumber, pairName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { type Naming, type Show, showForce, showPlace, showSmall } from './show.ts';

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

/** How far apart across two heads stand that hold each other sideways no further. */
function headsAside(finding: Finding, naming: Naming, show: Show): string {
  const curve = curveClause(finding, show);
  const aside = `heads of ${pairName(naming, finding.subject)} stand ${showSmall(finding.value, show)} aside of each other`;
  return sentence(`${aside}${curve === '' ? '' : ` ${curve}`}, ${showSmall(finding.limit, show)} holds them`);
}

/** Heads apart in height while nothing pulls or pushes: a hook that only its own weight keeps down. */
const headsAfloat = (finding: Finding, naming: Naming, show: Show): string =>
  `${headsApart(finding, naming, show)} Nothing pulls or pushes there, so only its own weight keeps the hook down.`;

export const overrideWords: RiskWords = {
  title: 'Riding up',
  headline(finding, naming, show) {
    const joint = `joint ${jointNumber(naming, finding.subject)}`;
    const place = `at ${showPlace(finding.chainage, show)}${onSupport(finding)}`;
    const lifts = finding.governing === 'lift';
    return sentence(
      byStanding(finding, {
        fails: `${joint} ${lifts ? 'is lifted' : 'rides up'} ${place}`,
        undecided: `${joint} may ${lifts ? 'be lifted' : 'ride up'} ${place}`,
        near: `${joint} ${lifts ? 'is nearly lifted' : 'nearly rides up'} ${place}`,
        passes: `no joint rides up; ${joint} comes nearest, ${place}`,
      }),
    );
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
  headline(finding, naming, show) {
    const joint = `joint ${jointNumber(naming, finding.subject)}`;
    const place = `at ${showPlace(finding.chainage, show)}${onSupport(finding)}`;
    return sentence(
      byStanding(finding, {
        fails: `${joint} parts ${place}`,
        undecided: `${joint} may part ${place}`,
        near: `${joint} nearly parts ${place}`,
        passes: `every joint holds; ${joint} holds by least, ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    if (finding.governing === 'side-hold') return headsAside(finding, naming, show);
    if (finding.governing === 'float') return headsAfloat(finding, naming, show);
    if (finding.governing !== 'release') return headsApart(finding, naming, show);
    const pulled = `${pairName(naming, finding.subject)} are pulled with ${showForce(finding.value)}`;
    const route = routeClause(finding, show);
    return sentence(`${pulled}${route === '' ? '' : ` ${route}`}, the coupling lets go at ${showForce(finding.limit)}`);
  },
};
