import type { Leftover } from '../residuals.ts';
import { board } from './board.ts';
import type { Family, SlipContext } from './candidate.ts';
import { edgeRadius } from './edgeRadius.ts';
import { shifted } from './shifted.ts';
import { outlier, wrongSupport } from './single.ts';
import { raisedFrom, spacers } from './spacers.ts';
import { wrongUnit } from './wrongUnit.ts';

/** Everything that is looked for. A further slip is a file of its own and a line here. */
export const families: readonly ((context: SlipContext, left: Leftover) => Family)[] = [
  wrongSupport,
  outlier,
  wrongUnit,
  shifted,
  spacers,
  raisedFrom,
  edgeRadius,
  board,
];
