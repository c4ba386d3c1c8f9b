import type { Limits } from '../../../core/survey/types.ts';

/** What holds a limit in a scene. */
export type LimitField =
  | 'greatestGradePercent'
  | 'leastGradePercent'
  | 'greatestKinkPercent'
  | 'leastRadiusMm'
  | 'headroomMm'
  | 'largestRiseMm'
  | 'largestDropMm';

/** What holds each limit in a scene, and what its field is called; in the order of the sheet. */
export const limitFields: Readonly<Record<keyof Limits, { readonly field: LimitField; readonly label: string }>> = {
  greatestGrade: { field: 'greatestGradePercent', label: 'Greatest grade' },
  leastGrade: { field: 'leastGradePercent', label: 'Least grade' },
  greatestKink: { field: 'greatestKinkPercent', label: 'Change of grade at a support' },
  leastRadius: { field: 'leastRadiusMm', label: 'Least vertical radius' },
  headroom: { field: 'headroomMm', label: 'Headroom to the deck above' },
  largestRise: { field: 'largestRiseMm', label: 'Most a support goes up' },
  largestDrop: { field: 'largestDropMm', label: 'Most a support goes down' },
};
