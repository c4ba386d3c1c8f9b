import type { Finding } from '../types.ts';
import { byStanding, curveClause, loadClause, sentence } from './clauses.ts';
import { vehicleName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { type Naming, type Show, showForce, showPlace } from './show.ts';

/** ` to the inside`, ` to the outside`; empty on straight track. */
function side({ governing }: Finding): string {
  if (governing === 'inner-rail') return ' to the inside';
  return governing === 'outer-rail' ? ' to the outside' : '';
}

/** `the outer rail`, `the rail`. */
function rail({ governing }: Finding): string {
  if (governing === 'inner-rail') return 'the inner rail';
  return governing === 'outer-rail' ? 'the outer rail' : 'the rail';
}

/** ` in the curve of 438 mm radius under a pull of 0.55 N`. */
function circumstances(finding: Finding, show: Show): string {
  return [curveClause(finding, show), loadClause(finding)].map((part) => (part === '' ? '' : ` ${part}`)).join('');
}

const place = (finding: Finding, show: Show): string => `at ${showPlace(finding.chainage, show)}`;
const who = (finding: Finding, naming: Naming): string => vehicleName(naming, finding.subject);

export const wheelClimbWords: RiskWords = {
  title: 'Flange hold',
  headline(finding, naming, show) {
    const vehicle = who(finding, naming);
    const there = place(finding, show);
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} climbs ${rail(finding)} ${there}`,
        undecided: `${vehicle} may climb ${rail(finding)} ${there}`,
        near: `${vehicle} nearly climbs ${rail(finding)} ${there}`,
        passes: `no flange climbs; ${vehicle} comes nearest, ${there}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const presses = `a flange of ${who(finding, naming)} presses on ${rail(finding)} with ${showForce(finding.value)}`;
    return sentence(
      `${presses}${circumstances(finding, show)}, under its wheel’s load it climbs at ${showForce(finding.limit)}`,
    );
  },
};

export const stringLiningWords: RiskWords = {
  title: 'String-lining',
  headline(finding, naming, show) {
    const vehicle = who(finding, naming);
    const there = place(finding, show);
    // Between longer vehicles, whose ends are thrown out, a short one is pulled outward: not what the trade calls string-lining.
    const outward = finding.governing === 'outer-rail';
    const tips = `${side(finding)} ${there}`;
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} ${outward ? 'is pulled over' : 'string-lines'}${tips}`,
        undecided: `${vehicle} may ${outward ? 'be pulled over' : 'string-line'}${tips}`,
        near: `${vehicle} ${outward ? 'is nearly pulled over' : 'nearly string-lines'}${tips}`,
        passes: `nothing string-lines; ${vehicle} comes nearest, ${there}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const pulls = `its couplings pull ${who(finding, naming)} sideways with ${showForce(finding.value)}`;
    return sentence(
      `${pulls}${circumstances(finding, show)}, its weight tips over ${rail(finding)} at ${showForce(finding.limit)}`,
    );
  },
};

export const jackKnifeWords: RiskWords = {
  title: 'Jack-knifing',
  headline(finding, naming, show) {
    const vehicle = who(finding, naming);
    const there = place(finding, show);
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} jack-knifes${side(finding)} ${there}`,
        undecided: `${vehicle} may jack-knife${side(finding)} ${there}`,
        near: `${vehicle} nearly jack-knifes${side(finding)} ${there}`,
        passes: `nothing jack-knifes; ${vehicle} comes nearest, ${there}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const presses = `one end of ${who(finding, naming)} is pressed sideways with ${showForce(finding.value)}`;
    return sentence(
      `${presses}${circumstances(finding, show)}, its weight tips over ${rail(finding)} at ${showForce(finding.limit)}`,
    );
  },
};
