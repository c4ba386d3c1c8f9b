import fc from 'fast-check';

/**
 * Property tests draw the same cases every time, so that a failure is met by the one who caused it. `FC_SEED` draws
 * others: a number of one's own, or `random`.
 */
const wanted = process.env.FC_SEED ?? '20260';

fc.configureGlobal(wanted === 'random' ? {} : { seed: Number(wanted) });
