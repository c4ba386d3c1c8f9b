import { engineName, routeClause, sentence } from './clauses.ts';
import type { RiskWords } from './riskWords.ts';
import { showForce, showPlace, showShare } from './show.ts';

export const stallWords: RiskWords = {
  title: 'Pull in hand',
  headline(finding, _naming, show) {
    const place = `at ${showPlace(finding.chainage, show)}`;
    if (finding.verdict === 'fails') return `The train stalls ${place}.`;
    if (finding.verdict === 'near') return `The train nearly stalls ${place}.`;
    return `The train keeps going; it has least in hand ${place}.`;
  },
  cause(finding, _naming, show) {
    const route = routeClause(finding, show);
    const needs = `it needs ${showForce(finding.value)}${route === '' ? '' : ` ${route}`}`;
    const gives = finding.governing === 'grip' ? 'the wheels grip' : 'at this setting the motor gives';
    return sentence(`${needs}, ${gives} ${showForce(finding.limit)}`);
  },
};

export const wheelspinWords: RiskWords = {
  title: 'Grip in hand',
  headline(finding, naming, show) {
    const engine = engineName(naming, finding.subject);
    const place = `at ${showPlace(finding.chainage, show)}`;
    if (finding.verdict === 'fails') return `The wheels of ${engine} spin ${place}.`;
    if (finding.verdict === 'near') return `The wheels of ${engine} nearly spin ${place}.`;
    return `The wheels grip; ${engine} uses most of it ${place}.`;
  },
  cause(finding, _naming, show) {
    const route = routeClause(finding, show);
    const there = route === '' ? '' : ` ${route}`;
    if (finding.verdict === 'fails')
      return sentence(`${showShare(finding.value - 1)} of their turning is lost${there}`);
    return sentence(`${showShare(finding.value)} of the grip is used${there}`);
  },
};
