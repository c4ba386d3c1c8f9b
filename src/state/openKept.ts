import { parseScene } from '../scene/index.ts';
import type { KeptScene } from './ports.ts';
import type { Session } from './session.ts';

/** Opens a scene kept on this machine where it was left. False, and nothing changed, when it can no longer be read. */
export async function openKept({ actions }: Session, kept: KeptScene): Promise<boolean> {
  const parsed = parseScene(kept.text);
  if (!parsed.ok) return false;
  await actions.openScene(parsed.scene, { from: 'machine', name: kept.name }, kept.trialId);
  return true;
}
