import { always, type Command } from './command.ts';

export const toggleGradeForm: Command = {
  id: 'toggle-grade-form',
  label: ({ session }) =>
    session.getState().gradeForm === 'one-in' ? 'Show grades in per cent' : 'Show grades as 1 in n',
  key: null,
  canRun: always,
  run: ({ actions, session }) => actions.setGradeForm(session.getState().gradeForm === 'one-in' ? 'percent' : 'one-in'),
};
