import type { Finding, Verdict } from './types.ts';

/** A verdict, or none: as it is built it may come out either way. */
export type Standing = Verdict | 'undecided';

/**
 * How a finding stands once its tolerances are counted. The verdict is that of the margin as measured; it is undecided when the
 * margins over the tolerances lie on both sides of zero, so that it fails or passes by how the thing is made.
 */
export function standingOf({ verdict, range }: Pick<Finding, 'verdict' | 'range'>): Standing {
  return range !== null && range[0] < 0 && range[1] >= 0 ? 'undecided' : verdict;
}

/** How grave a standing is, 0 the gravest. */
export const standings: readonly Standing[] = ['fails', 'undecided', 'near', 'passes'];

/** A standing in words. */
export const standingWords: Readonly<Record<Standing, string>> = {
  fails: 'fails',
  undecided: 'may fail',
  near: 'near',
  passes: 'passes',
};
