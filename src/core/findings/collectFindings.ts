import { riskById } from '../risks/index.ts';
import type { RiskContext, RiskSeries } from '../risks/types.ts';
import { explainers } from './explain/explainers.ts';
import { reachOf } from './explain/reach.ts';
import { placesOf } from './places.ts';
import type { Driven } from './settingsAlong.ts';
import { situationAt, trialOf } from './situation.ts';
import type { Finding } from './types.ts';
import { byGravity, verdictOf } from './verdict.ts';

/**
 * What a trial means: one finding for every bad place of every risk, and one for each risk that passes, in order of gravity:
 * what fails first, then what may as built, then near, then passes, each by its margin relative to the risk's `plenty`. Chainages are the
 * scene's own. With the script the train was driven by, its whole route counts for cures, also where the run did not
 * come to; without it nothing is said of how much pull a cure of a stall or a spin has to give.
 */
export function collectFindings(
  series: readonly RiskSeries[],
  context: RiskContext,
  driven: Driven | null = null,
): Finding[] {
  const trial = trialOf(context, driven);
  const found: { finding: Finding; share: number }[] = [];
  for (const row of series) {
    const definition = riskById(row.risk);
    const places = placesOf(row, definition);
    for (const place of places) {
      const situation = situationAt(trial, row.risk, place.frame, place.subject);
      if (situation === null) continue;
      const { worst } = situation;
      const verdict = verdictOf(definition, worst);
      const told = verdict !== 'passes';
      // Places were picked by the fixed near distance; on small stock less than that is plenty.
      if (!told && place !== places[0]) continue;
      const causes = told ? explainers[row.risk].causes(situation) : [];
      const reach = row.risk === 'stall' ? reachOf(situation) : null;
      const finding: Finding = {
        risk: row.risk,
        verdict,
        time: context.run.time[worst.frame],
        frame: worst.frame,
        chainage: trial.otherWay(worst.chainage),
        subject: worst.subject,
        value: worst.value,
        limit: worst.limit,
        margin: worst.margin,
        range: worst.range,
        parts: worst.parts,
        governing: worst.governing,
        ...(worst.compare === undefined ? {} : { compare: worst.compare }),
        causes,
        cures: told ? explainers[row.risk].cures(situation, causes) : [],
        ...(reach === null ? {} : { reach }),
      };
      found.push({ finding, share: worst.margin / definition.plenty });
    }
  }
  return found.sort(byGravity).map(({ finding }) => finding);
}
