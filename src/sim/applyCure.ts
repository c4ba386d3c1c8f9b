import type { Cure } from '../core/findings/types.ts';
import { parseScene, type Scene } from '../scene/index.ts';
import { changeWorking } from './cures/changeWorking.ts';
import { addEasement } from './cures/easement.ts';
import { addEngineWeight } from './cures/engineWeight.ts';
import { takeVehiclesOff } from './cures/fewerVehicles.ts';
import { matchHeads } from './cures/matchHeads.ts';
import { setSupport } from './cures/setSupport.ts';
import { changeSetting } from './cures/setting.ts';
import { spliceJoint } from './cures/spliceJoint.ts';
import { straightBetween } from './cures/straightBetween.ts';
import { roundOff } from './cures/verticalCurve.ts';

/**
 * The scene with one cure applied: a new scene, the old one untouched, or null when the cure does not apply to this
 * scene or leads to one that would not be accepted as a file.
 */
export function applyCure(scene: Scene, trialId: string, cure: Cure): Scene | null {
  const trial = scene.trials.find((one) => one.id === trialId);
  if (trial === undefined) return null;
  const changed = change(scene, trialId, cure);
  if (changed === null) return null;
  const checked = parseScene(changed);
  return checked.ok ? checked.scene : null;
}

function change(scene: Scene, trialId: string, cure: Cure): Scene | null {
  switch (cure.kind) {
    case 'set-support':
      return setSupport(scene, trialId, cure.support, cure.by);
    case 'splice-joint':
      return spliceJoint(scene, trialId, cure.chainage);
    case 'vertical-curve':
      return roundOff(scene, trialId, cure.chainage, cure.length);
    case 'easement':
      return addEasement(scene, trialId, cure.chainage, cure.length);
    case 'straight-between':
      return straightBetween(scene, trialId, cure.chainage, cure.length);
    case 'change-working':
      return changeWorking(scene, trialId);
    case 'fewer-vehicles':
      return takeVehiclesOff(scene, trialId, cure.by);
    case 'match-heads':
      return matchHeads(scene, trialId, cure.joint);
    case 'add-engine-weight':
      return addEngineWeight(scene, trialId, cure.by);
    case 'setting':
      return changeSetting(scene, trialId, cure.to);
  }
}
