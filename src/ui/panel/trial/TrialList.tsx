import { chooseRailway } from '../../../state/commands/index.ts';
import { useSession } from '../../context.tsx';
import { CommandButton } from '../../controls/CommandButton.tsx';
import { TrialButtons } from './TrialButtons.tsx';

/** The trials of this scene, and the way to other scenes. */
export function TrialList() {
  const trials = useSession((state) => state.scene?.trials);
  if (!trials) return null;
  return (
    <>
      <div className="trials-head">
        <h3 id="trials-of-scene">Trials</h3>
        <CommandButton command={chooseRailway} className="link other-scenes" wordsInside>
          Other railways…
        </CommandButton>
      </div>
      <TrialButtons trials={trials} labelledBy="trials-of-scene" />
    </>
  );
}
