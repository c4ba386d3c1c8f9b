import { serialiseScene } from '../../scene/index.ts';
import { wordsOf } from '../aborting.ts';
import { fileNameOf } from '../fileName.ts';
import type { RailwayFile } from '../ports.ts';
import type { Command, CommandContext } from './command.ts';

async function write({ files, actions, session }: CommandContext, into: RailwayFile | null): Promise<void> {
  const { scene, opened } = session.getState();
  if (!scene) return;
  try {
    const file = await files.save(into?.name ?? fileNameOf(scene.name, '.json'), serialiseScene(scene), into);
    // Another railway may be open by the time the dialog is closed.
    if (file?.handle && session.getState().opened === opened) session.setState({ file });
  } catch (error) {
    actions.report({ title: 'The file could not be written', lines: [wordsOf(error)] });
  }
}

const isOpen = ({ session }: CommandContext): boolean => session.getState().scene !== null;

export const saveFile: Command = {
  id: 'save-file',
  label({ session }) {
    const { file } = session.getState();
    return file?.handle ? `Save to “${file.name}”` : 'Save the scene as a file…';
  },
  key: '$mod+s',
  shownKey: 'Ctrl S',
  canRun: isOpen,
  run: (context) => write(context, context.session.getState().file),
};

export const saveElsewhere: Command = {
  id: 'save-elsewhere',
  label: () => 'Save the scene as another file…',
  key: '$mod+Shift+s',
  shownKey: 'Ctrl Shift S',
  canRun: (context) => isOpen(context) && context.session.getState().file?.handle != null,
  run: (context) => write(context, null),
};
