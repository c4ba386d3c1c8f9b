import { parseScene } from '../scene/index.ts';
import type { KeepPort, KeptScene } from './ports.ts';
import type { Session } from './session.ts';

/**
 * Opens a railway kept on this machine where it was left; as a copy of its own where another window has it open, so that neither writes
 * over the other. False, and nothing changed, when it can no longer be read.
 */
export async function openKept(
  { actions, session }: Session,
  kept: KeptScene,
  port: Pick<KeepPort, 'claim' | 'file'>,
): Promise<boolean> {
  const parsed = parseScene(kept.text);
  if (!parsed.ok) return false;
  const { scene } = parsed;
  if (await port.claim(kept.id)) {
    const file = await port.file(kept.id);
    const solved = actions.openScene(scene, { from: 'machine', name: kept.name, id: kept.id }, kept.trialId);
    if (session.getState().opened?.id === kept.id) session.setState({ file });
    await solved;
  } else {
    const copy = { ...scene, name: `${scene.name}, copy` };
    await actions.openScene(copy, { from: 'copy', name: kept.name }, kept.trialId);
  }
  return true;
}
