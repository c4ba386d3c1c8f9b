import type { Cure } from '../core/findings/types.ts';
import { parseScene, type Scene, type SceneTrial } from '../scene/index.ts';
import { compileScene } from './compileScene.ts';
import { compileTrial } from './compileTrial.ts';
import { changeWorking } from './cures/changeWorking.ts';
import { addEasement } from './cures/easement.ts';
import { addEngineWeight } from './cures/engineWeight.ts';
import { takeVehiclesOff } from './cures/fewerVehicles.ts';
import { matchHeads } from './cures/matchHeads.ts';
import { curedTrack } from './cures/parts.ts';
import { setSupport } from './cures/setSupport.ts';
import { changeSetting } from './cures/setting.ts';
import { spliceJoint } from './cures/spliceJoint.ts';
import { straightBetween } from './cures/straightBetween.ts';
import { roundOff } from './cures/verticalCurve.ts';

/**
 * The scene with one cure applied: a new scene, the old one untouched, or null when the cure does not apply to this
 * scene or leads to one that would not be accepted as a file, or whose route no longer hangs together.
 */
export function applyCure(scene: Scene, trialId: string, cure: Cure): Scene | null {
  const trial = scene.trials.find((one) => one.id === trialId);
  if (trial === undefined) return null;
  const changed = change(scene, trial, cure);
  if (changed === null) return null;
  const checked = parseScene(changed);
  if (!checked.ok) return null;
  const alone = trial.route === undefined && trial.follows === undefined;
  return alone || hangsTogether(checked.scene, trialId) ? checked.scene : null;
}

/** Whether a route still closes: a cure may have moved one of its tracks away from the next. */
function hangsTogether(scene: Scene, trialId: string): boolean {
  try {
    compileTrial(compileScene(scene), trialId);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

function change(scene: Scene, trial: SceneTrial, cure: Cure): Scene | null {
  const trialId = trial.id;
  const on = curedTrack(scene, trial, 'leg' in cure ? cure.leg : undefined);
  if (on === null) return null;
  const { track, own } = on;
  switch (cure.kind) {
    case 'set-support':
      return setSupport(scene, track, cure.support, cure.by);
    case 'splice-joint':
      return spliceJoint(scene, track, own(cure.chainage));
    case 'vertical-curve':
      return roundOff(scene, track, own(cure.chainage), cure.length);
    case 'easement':
      return addEasement(scene, track, own(cure.chainage), cure.length);
    case 'straight-between':
      return straightBetween(scene, track, own(cure.chainage), cure.length);
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
