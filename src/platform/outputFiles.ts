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
  save: (name: string, text: string, kind: Kind): Promise<boolean> =>
    saveBlob(name, new Blob([text], { type: kind.mimeType }), kind),
  savePicture: (name: string, picture: Blob): Promise<boolean> => saveBlob(name, picture, png),
  show(text: string, { mimeType }: Kind): void {
    const address = URL.createObjectURL(new Blob([text], { type: mimeType }));
    window.open(address, '_blank', 'noopener');
    setTimeout(() => URL.revokeObjectURL(address), shownFor);
  },
};

const png: Kind = { description: 'Picture', mimeType: 'image/png', extension: '.png' };

/** False when the person closed the dialog instead of choosing. */
async function saveBlob(name: string, blob: Blob, { description, mimeType, extension }: Kind): Promise<boolean> {
  try {
    await fileSave(blob, { fileName: name, description, mimeTypes: [mimeType], extensions: [extension], id: 'output' });
    return true;
  } catch (error) {
    if (error instanceof Error && error.name === 'AbortError') return false;
    throw error;
  }
}
