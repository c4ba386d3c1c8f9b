import { stopOnShow } from '../show/index.ts';
import type { Command, CommandContext } from './command.ts';

const hasTour = ({ session }: CommandContext): boolean => (session.getState().scene?.tour?.length ?? 0) > 0;

/** Keys of the presentation are free for other uses outside it. */
const presenting = ({ session }: CommandContext): boolean => session.getState().tour.presenting;

export const presentTour: Command = {
  id: 'tour-present',
  label: ({ session }) =>
    session.getState().tour.presenting ? 'Leave the presentation' : 'Show the tour to an audience',
  key: 'p',
  shownKey: 'P',
  canRun: (context) => presenting(context) || hasTour(context),
  run: (context) => (presenting(context) ? context.actions.stopPresenting() : context.actions.present()),
};

export const nextStop: Command = {
  id: 'tour-next',
  label: ({ session }) => {
    const { tour } = session.getState();
    return tour.guessFirst && !tour.told && tour.stop !== null ? 'Tell the verdict' : 'Next stop of the tour';
  },
  key: 'ArrowRight',
  shownKey: '→',
  // What a pointer for lecturers sends.
  fieldKey: { key: 'PageDown', shown: 'Page Down' },
  canRun: presenting,
  run: ({ actions }) => actions.nextStop(),
};

export const previousStop: Command = {
  id: 'tour-previous',
  label: () => 'Previous stop of the tour',
  key: 'ArrowLeft',
  shownKey: '←',
  fieldKey: { key: 'PageUp', shown: 'Page Up' },
  canRun: (context) => presenting(context) && (stopOnShow(context.session.getState())?.index ?? 0) > 0,
  run: ({ actions }) => actions.previousStop(),
};

export const runTour: Command = {
  id: 'tour-run',
  label: ({ session }) => (session.getState().tour.running ? 'Hold the tour' : 'Run through the tour'),
  key: 't',
  shownKey: 'T',
  canRun: hasTour,
  run: ({ actions, session }) => (session.getState().tour.running ? actions.holdTour() : actions.runTour()),
};

export const guessFirst: Command = {
  id: 'tour-guess-first',
  label: ({ session }) =>
    session.getState().tour.guessFirst ? 'Tell verdicts at once' : 'Let the audience guess first',
  key: 'g',
  shownKey: 'G',
  canRun: hasTour,
  run: ({ actions, session }) => actions.setGuessFirst(!session.getState().tour.guessFirst),
};

export const proposeTour: Command = {
  id: 'tour-propose',
  label: () => 'Propose a tour of this railway',
  key: null,
  canRun: (context) => !hasTour(context) && context.session.getState().result !== null,
  run: ({ actions }) => said(actions, actions.proposeTour()),
};

export const addView: Command = {
  id: 'tour-add-view',
  label: () => 'Add this view to the tour',
  key: 'a',
  shownKey: 'A',
  canRun: ({ session }) => session.getState().trial !== null,
  run: ({ actions }) => said(actions, actions.addView()),
};

/** Where there is no sheet to say it on, the screen says why it could not be done. */
function said(actions: CommandContext['actions'], why: string | null): void {
  if (why !== null) actions.report({ title: 'The tour stays as it is', lines: [why] });
}
