import { mostVehicles, reserve } from '../explain/reach.ts';
import type { Finding } from '../types.ts';
import { byStanding, routeClause, sentence } from './clauses.ts';
import { engineName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { type Show, showForce, showGrade, showPlace } from './show.ts';

/** `on 1 in 34 up in the curve of 438 mm radius`, with a space before; empty on the level straight. */
function there(finding: Finding, show: Show): string {
  const route = routeClause(finding, show);
  return route === '' ? '' : ` ${route}`;
}

/** Further on than this the route asks for more than at the finding's own place: shares of the need. */
const worseBy = 0.05;

/** `Worse is to come: at 14.39 m it would need 0.87 N and has 0.33 N.` where the run did not come to the worst of its route; else empty. */
function furtherOn({ margin, reach }: Finding, show: Show): string {
  if (reach === undefined || reach.available / reach.needed - 1 > margin - worseBy) return '';
  const needs = `at ${showPlace(reach.chainage, show)} it would need ${showForce(reach.needed)}`;
  return sentence(`worse is to come: ${needs} and has ${showForce(reach.available)}`);
}

/** `At most 4 vehicles would get over the whole route with 2 % in hand, engines and tenders not counted; this train climbs at most 1.3 % in such a curve.` */
function whatPasses({ reach, causes }: Finding, show: Show): string {
  if (reach === undefined) return '';
  const { vehicles, grade } = reach;
  const count =
    vehicles === 0
      ? 'no vehicle'
      : `${vehicles >= mostVehicles ? 'more than' : 'at most'} ${vehicles} vehicle${vehicles === 1 ? '' : 's'}`;
  const where = causes.some(({ kind }) => kind === 'curve') ? 'in such a curve' : 'on the straight';
  const climbs =
    grade === null
      ? `this train is too heavy even for the level ${where}`
      : `this train climbs at most ${showGrade(grade, show)} ${where}`;
  return sentence(
    `${count} would get over the whole route with ${reserve * 100} % in hand, engines and tenders not counted; ${climbs}`,
  );
}

export const stallWords: RiskWords = {
  title: 'Pull in hand',
  headline(finding, _naming, show) {
    const place = `at ${showPlace(finding.chainage, show)}`;
    return sentence(
      byStanding(finding, {
        fails: `the train stalls ${place}`,
        undecided: `the train may stall ${place}`,
        near: `the train nearly stalls ${place}`,
        passes: `there is pull enough; least is in hand ${place}`,
      }),
    );
  },
  cause(finding, _naming, show) {
    const gives = finding.governing === 'grip' ? 'the wheels grip' : 'at this setting the motor gives';
    const needs = `it needs ${showForce(finding.value)}${there(finding, show)}, ${gives} ${showForce(finding.limit)}`;
    return [sentence(needs), furtherOn(finding, show), whatPasses(finding, show)]
      .filter((part) => part !== '')
      .join(' ');
  },
};

export const wheelspinWords: RiskWords = {
  title: 'Grip in hand',
  headline(finding, naming, show) {
    const engine = engineName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    return sentence(
      byStanding(finding, {
        fails: `the wheels of ${engine} spin ${place}`,
        undecided: `the wheels of ${engine} may spin ${place}`,
        near: `the wheels of ${engine} nearly spin ${place}`,
        passes: `the wheels grip; ${engine} uses most of its grip ${place}`,
      }),
    );
  },
  cause(finding, _naming, show) {
    const asked = `${finding.governing === 'slip' ? 'to turn with the rail they would have to carry' : 'they carry'} ${showForce(finding.value)}`;
    return sentence(`${asked}${there(finding, show)}, their grip ends at ${showForce(finding.limit)}`);
  },
};
