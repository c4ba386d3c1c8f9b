import type { CameraName } from '../types.ts';
import { always, type Command } from './command.ts';

const words: Readonly<Record<CameraName, string>> = {
  walk: 'walk round',
  eye: 'eye height',
  ride: 'ride',
  down: 'straight down',
  follow: 'follow',
};

/** One command for each camera. */
export const cameras: readonly Command[] = (Object.keys(words) as CameraName[]).map((camera, index) => ({
  id: `camera-${camera}`,
  label: () => `Camera: ${words[camera]}`,
  key: `Shift+Digit${index + 1}`,
  shownKey: `Shift ${index + 1}`,
  canRun: always,
  run: ({ actions }) => actions.setCamera(camera),
}));
