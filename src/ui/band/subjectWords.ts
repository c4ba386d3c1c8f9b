import type { RiskSubject } from '../../core/risks/types.ts';
import type { Train } from '../../core/stock/types.ts';

/** Who a margin belongs to, counted from 1 at the leading end; nothing where there is no choice. */
export function subjectWords(train: Train, kind: RiskSubject, subject: number): string {
  if (kind === 'joint') return `joint ${subject + 1}`;
  if (kind === 'vehicle') return `vehicle ${subject + 1}`;
  const engines = train.vehicles.filter((vehicle) => vehicle.drive !== null).length;
  return engines > 1 ? `engine ${subject + 1}` : '';
}
