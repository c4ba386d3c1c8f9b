import type { Finding } from '../types.ts';
import type { Naming, Show } from './show.ts';

/** How one risk is put into words. Every risk has one, for failing, near and passing findings alike. */
export interface RiskWords {
  /** Of the row that plots its margin. */
  readonly title: string;
  headline(finding: Finding, naming: Naming, show: Show): string;
  cause(finding: Finding, naming: Naming, show: Show): string;
}
