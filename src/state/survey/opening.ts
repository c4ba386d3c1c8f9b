import { usualTools } from './tools.ts';
import type { SurveyState } from './types.ts';

/** Nothing chosen, nothing worked out: how every scene begins. */
export const opening: SurveyState = {
  chosen: null,
  draft: null,
  part: 'read',
  tools: usualTools(),
  walk: null,
  phone: {
    state: 'off',
    trouble: null,
    steady: null,
    baseMm: 150,
    firstFace: null,
    calibration: null,
    instruments: {},
    waits: null,
    said: null,
  },
  table: '',
  worked: null,
  workedFrom: '',
  working: false,
  objective: 'fewest',
  mended: null,
  mendedFrom: '',
  mending: false,
  trains: null,
  against: null,
  problem: null,
};
