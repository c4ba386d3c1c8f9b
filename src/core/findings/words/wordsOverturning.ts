import { byStanding, causeOf, curveClause, sentence } from './clauses.ts';
import { vehicleName } from './naming.ts';
import type { RiskWords } from './riskWords.ts';
import { showAngle, showForce, showPlace, showSpeed } from './show.ts';

export const overturningWords: RiskWords = {
  title: 'Upright',
  headline(finding, naming, show) {
    const vehicle = vehicleName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    const { governing } = finding;
    const side = governing === 'outer-rail' ? ' to the outside' : governing === 'inner-rail' ? ' to the inside' : '';
    return sentence(
      byStanding(finding, {
        fails: `${vehicle} goes over${side} ${place}`,
        undecided: `${vehicle} may go over${side} ${place}`,
        near: `${vehicle} nearly goes over${side} ${place}`,
        passes: `nothing goes over; ${vehicle} comes nearest, ${place}`,
      }),
    );
  },
  cause(finding, naming, show) {
    const curve = curveClause(finding, show);
    const speed = causeOf(finding, 'speed');
    const cant = causeOf(finding, 'cant');
    const ways = [
      speed === undefined ? '' : `at ${showSpeed(speed.speed)}`,
      curve,
      cant === undefined ? '' : `with the track leaning ${showAngle(Math.abs(cant.cant))}`,
    ].filter((part) => part !== '');
    const tips = `${vehicleName(naming, finding.subject)} is tipped with ${showForce(finding.value)} at the height of its mass`;
    return sentence(`${[tips, ...ways].join(' ')}, its weight holds ${showForce(finding.limit)}`);
  },
};
