import type { Cure } from '../types.ts';
import { jointNumber } from './naming.ts';
import {
  type Naming,
  ofTrack,
  plainShow,
  type Show,
  showLength,
  showMass,
  showOf,
  showPlace,
  showShare,
  showSmall,
} from './show.ts';

/** A cure as a short order to oneself: `Lower support 14 by 2.5 mm`; said of one that is not enough by itself that it is not. */
export function describeCure(cure: Cure, naming: Naming, show: Show = plainShow): string {
  const order = orderOf(cure, naming, showOf(naming, show));
  return cure.enough === false ? `${order} (helps, not enough)` : order;
}

function orderOf(cure: Cure, naming: Naming, show: Show): string {
  switch (cure.kind) {
    case 'set-support': {
      const turn = cure.by < 0 ? 'Lower' : 'Raise';
      return `${turn} support ${cure.support + 1}${ofTrack(cure.leg, show)} by ${showSmall(Math.abs(cure.by), show)}`;
    }
    case 'splice-joint':
      return `Splice the strip joint at ${showPlace(cure.chainage, show)}`;
    case 'vertical-curve':
      return `${showLength(cure.length, show)} vertical curve at ${showPlace(cure.chainage, show)}`;
    case 'easement':
      return `${showLength(cure.length, show)} easement at ${showPlace(cure.chainage, show)}`;
    case 'straight-between':
      return `${showLength(cure.length, show)} of straight at ${showPlace(cure.chainage, show)}`;
    case 'change-working':
      if (naming.propelled === undefined) return 'Engine at the other end';
      return naming.propelled ? 'Pulled instead of propelled' : 'Propelled instead of pulled';
    case 'fewer-vehicles':
      return cure.by === 1 ? 'One vehicle fewer' : `${cure.by} vehicles fewer`;
    case 'match-heads':
      return `Set both heads of joint ${jointNumber(naming, cure.joint)} to one height`;
    case 'add-engine-weight':
      return `${showMass(cure.by, show)} more on the driven wheels`;
    case 'setting':
      return `Controller at ${showShare(cure.to)}`;
  }
}
