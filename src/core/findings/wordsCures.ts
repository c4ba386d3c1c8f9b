import { type Naming, plainShow, type Show, showLength, showMass, showPlace, showShare, showSmall } from './show.ts';
import type { Cure } from './types.ts';

/** A cure as a short order to oneself: `Lower support 14 by 2.5 mm`. */
export function describeCure(cure: Cure, naming: Naming, show: Show = plainShow): string {
  switch (cure.kind) {
    case 'set-support': {
      const turn = cure.by < 0 ? 'Lower' : 'Raise';
      return `${turn} support ${cure.support + 1} by ${showSmall(Math.abs(cure.by), show)}`;
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
      return naming.propelled ? 'Pull instead of push' : 'Push instead of pull';
    case 'fewer-vehicles':
      return cure.by === 1 ? 'One vehicle less' : `${cure.by} vehicles less`;
    case 'match-heads':
      return `Set both heads of joint ${cure.joint + 1} to one height`;
    case 'add-engine-weight':
      return `${showMass(cure.by, show)} more on the driven wheels`;
    case 'setting':
      return `Controller at ${showShare(cure.to)}`;
  }
}
