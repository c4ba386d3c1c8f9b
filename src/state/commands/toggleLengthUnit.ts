import { always, type Command } from './command.ts';

export const toggleLengthUnit: Command = {
  id: 'toggle-length-unit',
  label: ({ session }) => (session.getState().lengthUnit === 'mm' ? 'Show lengths in inches' : 'Show lengths in mm'),
  key: null,
  canRun: always,
  run: ({ actions, session }) => actions.setLengthUnit(session.getState().lengthUnit === 'mm' ? 'in' : 'mm'),
};
