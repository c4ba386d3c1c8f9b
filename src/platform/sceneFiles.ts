import { fileOpen, fileSave } from 'browser-fs-access';

const kind = { description: 'Gradewright scene', mimeTypes: ['application/json'], extensions: ['.json'], id: 'scene' };

/** What can be opened: a page to pass on has the railway in it. */
const openable = { ...kind, mimeTypes: [...kind.mimeTypes, 'text/html'], extensions: [...kind.extensions, '.html'] };

/** True when the person closed the dialog instead of choosing. */
const wasDismissed = (error: unknown): boolean => error instanceof Error && error.name === 'AbortError';

/** A file with the browser's handle on it, where it gives one. */
interface OnDisk {
  readonly name: string;
  readonly handle: object | null;
}

const handleOf = ({ handle }: OnDisk): FileSystemFileHandle | null =>
  typeof FileSystemFileHandle !== 'undefined' && handle instanceof FileSystemFileHandle ? handle : null;

/** Scene files through the browser's own dialogs; where there is no save dialog the file is downloaded. */
export const sceneFiles = {
  async pick(): Promise<(OnDisk & { readonly text: string }) | null> {
    try {
      const file = await fileOpen(openable);
      return { name: file.name, handle: file.handle ?? null, text: await file.text() };
    } catch (error) {
      if (wasDismissed(error)) return null;
      throw error;
    }
  },
  async save(name: string, text: string, file: OnDisk | null): Promise<OnDisk | null> {
    try {
      const blob = new Blob([text], { type: 'application/json' });
      // A file that was moved or deleted is asked for anew.
      const handle = await fileSave(blob, { ...kind, fileName: name }, file && handleOf(file));
      return { name: handle?.name ?? name, handle };
    } catch (error) {
      if (wasDismissed(error)) return null;
      throw error;
    }
  },
};
