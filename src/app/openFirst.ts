import type { Session } from '../state/index.ts';
import type { BundledScene } from '../ui/index.ts';

/** Opens the first scene and, unless the person asked for little motion, plays it as soon as it is solved. */
export async function openFirst({ actions, session }: Session, scenes: readonly BundledScene[]): Promise<void> {
  const [first] = scenes;
  if (!first) {
    actions.report({ title: 'No railway came with the program', lines: ['Open a scene file of your own.'] });
    return;
  }
  await actions.openScene(first.scene);
  if (session.getState().result && !matchMedia('(prefers-reduced-motion: reduce)').matches) actions.play();
}
