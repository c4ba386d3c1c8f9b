/** Lengths that drawings and tables are written in, mm. */
export const unitsMm: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };
