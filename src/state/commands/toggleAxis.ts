import { always, type Command } from './command.ts';

export const toggleAxis: Command = {
  id: 'toggle-axis',
  label: ({ session }) =>
    session.getState().axis === 'chainage' ? 'Lay the band along time' : 'Lay the band along the track',
  key: null,
  canRun: always,
  run: ({ actions, session }) => actions.setAxis(session.getState().axis === 'chainage' ? 'time' : 'chainage'),
};
