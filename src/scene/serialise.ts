import type { Scene } from './schema/schema.ts';

/** A scene as the text of its file: two spaces of indent and a newline at the end, so that versions can be compared. */
export const serialiseScene = (scene: Scene): string => `${JSON.stringify(scene, null, 2)}\n`;
