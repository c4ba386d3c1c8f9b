import { presentWorking } from '../working.ts';
import type { Command } from './command.ts';

/** Turns the two switches of the trial: which end leads, and which way the train goes. */
export const workings: readonly Command[] = [
  {
    id: 'working-pull',
    label: ({ session }) => {
      const now = presentWorking(session.getState());
      if (now && !now.turns) return 'Let the other end lead';
      return now?.propelled ? 'Pull instead of propel' : 'Propel instead of pull';
    },
    key: null,
    canRun: ({ session }) => presentWorking(session.getState()) !== null,
    run: async ({ actions, session }) => {
      const now = presentWorking(session.getState());
      if (now) await actions.setWorking({ leading: now.leading === 'first' ? 'last' : 'first' });
    },
  },
  {
    id: 'working-way',
    label: ({ session }) => `Run it ${presentWorking(session.getState())?.otherWay ?? 'the other way'}`,
    key: null,
    canRun: ({ session }) => presentWorking(session.getState()) !== null,
    run: async ({ actions, session }) => {
      const now = presentWorking(session.getState());
      if (now) await actions.setWorking({ towards: now.towards === 'end' ? 'start' : 'end' });
    },
  },
];
