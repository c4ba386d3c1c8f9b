import { serialiseScene } from '../../scene/index.ts';
import { wordsOf } from '../aborting.ts';
import type { Command } from './command.ts';

/** A file name that every system takes, from a railway's name. */
const fileNameOf = (name: string): string =>
  `${
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'railway'
  }.json`;

export const saveFile: Command = {
  id: 'save-file',
  label: () => 'Save the scene as a file…',
  key: '$mod+s',
  shownKey: 'Ctrl S',
  canRun: ({ session }) => session.getState().scene !== null,
  async run({ files, actions, session }) {
    const { scene } = session.getState();
    if (!scene) return;
    try {
      await files.save(fileNameOf(scene.name), serialiseScene(scene));
    } catch (error) {
      actions.report({ title: 'The file could not be written', lines: [wordsOf(error)] });
    }
  },
};
