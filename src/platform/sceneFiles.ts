import { fileOpen, fileSave } from 'browser-fs-access';

const kind = { description: 'Gradewright scene', mimeTypes: ['application/json'], extensions: ['.json'], id: 'scene' };

/** True when the person closed the dialog instead of choosing. */
const wasDismissed = (error: unknown): boolean => error instanceof Error && error.name === 'AbortError';

/** Scene files through the browser's own dialogs; where there is no save dialog the file is downloaded. */
export const sceneFiles = {
  async pick(): Promise<{ readonly name: string; readonly text: string } | null> {
    try {
      const file = await fileOpen(kind);
      return { name: file.name, text: await file.text() };
    } catch (error) {
      if (wasDismissed(error)) return null;
      throw error;
    }
  },
  async save(name: string, text: string): Promise<string | null> {
    try {
      const blob = new Blob([text], { type: 'application/json' });
      const handle = await fileSave(blob, { ...kind, fileName: name });
      return handle?.name ?? name;
    } catch (error) {
      if (wasDismissed(error)) return null;
      throw error;
    }
  },
};
