import { type KeepPort, openKept, type Session } from '../state/index.ts';
import type { BundledScene } from '../ui/index.ts';

/**
 * Goes on with the scene that was being changed last, else opens the first that came with the program. Unless the person asked
 * for little motion, it plays as soon as it is solved.
 */
export async function openFirst(session: Session, scenes: readonly BundledScene[], kept: KeepPort): Promise<void> {
  const { actions } = session;
  const last = kept.list().find(({ id }) => id === kept.last());
  const [first] = scenes;
  if (!last || !(await openKept(session, last, kept))) {
    if (first) await actions.openScene(first.scene);
    else actions.report({ title: 'No railway came with the program', lines: ['Open a scene file of your own.'] });
  }
  const little = matchMedia('(prefers-reduced-motion: reduce)').matches;
  if (session.session.getState().result && !little) actions.play();
}
