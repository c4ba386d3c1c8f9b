import { sceneInPage } from '../../scene/index.ts';
import { wordsOf } from '../aborting.ts';
import { always, type Command } from './command.ts';

export const openFile: Command = {
  id: 'open-file',
  label: () => 'Open a scene file…',
  key: '$mod+o',
  shownKey: 'Ctrl O',
  canRun: always,
  async run({ files, actions, session }) {
    try {
      const file = await files.pick();
      if (!file) return;
      const before = session.getState().opened;
      const solved = actions.openFileText(file.name, file.text);
      // Open at once, solved later: from now on it can be written back. A page that the railway stood in stays the page it is.
      if (session.getState().opened !== before && sceneInPage(file.text) === null) {
        session.setState({ file: { name: file.name, handle: file.handle } });
      }
      await solved;
    } catch (error) {
      actions.report({ title: 'The file could not be read', lines: [wordsOf(error)] });
    }
  },
};
