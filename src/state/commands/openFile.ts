import { wordsOf } from '../aborting.ts';
import { always, type Command } from './command.ts';

export const openFile: Command = {
  id: 'open-file',
  label: () => 'Open a scene file…',
  key: '$mod+o',
  shownKey: 'Ctrl O',
  canRun: always,
  async run({ files, actions }) {
    try {
      const file = await files.pick();
      if (file) await actions.openFileText(file.name, file.text);
    } catch (error) {
      actions.report({ title: 'The file could not be read', lines: [wordsOf(error)] });
    }
  },
};
