import { fileSave } from 'browser-fs-access';

interface Kind {
  readonly description: string;
  readonly mimeType: string;
  readonly extension: `.${string}`;
}

/** How long a page that is shown beside the program may be loaded from memory, ms. */
const shownFor = 60_000;

/** Files that the program makes, through the browser's own dialog; where there is none they are downloaded. */
export const outputFiles = {
  async save(name: string, text: string, { description, mimeType, extension }: Kind): Promise<boolean> {
    try {
      await fileSave(new Blob([text], { type: mimeType }), {
        fileName: name,
        description,
        mimeTypes: [mimeType],
        extensions: [extension],
        id: 'output',
      });
      return true;
    } catch (error) {
      if (error instanceof Error && error.name === 'AbortError') return false;
      throw error;
    }
  },
  show(text: string, { mimeType }: Kind): void {
    const address = URL.createObjectURL(new Blob([text], { type: mimeType }));
    window.open(address, '_blank', 'noopener');
    setTimeout(() => URL.revokeObjectURL(address), shownFor);
  },
};
