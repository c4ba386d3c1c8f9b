import { jointNumber, type Naming, vehicleNumber } from '../../../core/findings/index.ts';
import type { RiskSubject } from '../../../core/risks/types.ts';

/** Who a margin belongs to, by the scene's numbers; nothing where there is no choice. */
export function subjectWords(naming: Naming, kind: RiskSubject, subject: number): string {
  if (kind === 'joint') return `joint ${jointNumber(naming, subject)}`;
  if (kind === 'vehicle') return `vehicle ${vehicleNumber(naming, subject)}`;
  const engines = naming.locomotives?.length ?? 0;
  return engines > 1 ? `engine, vehicle ${vehicleNumber(naming, naming.locomotives?.[subject] ?? 0)}` : '';
}
