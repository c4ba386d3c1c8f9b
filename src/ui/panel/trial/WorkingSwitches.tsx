import { useMemo } from 'react';
import { presentWorking } from '../../../state/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { Segmented } from '../../controls/Segmented.tsx';

const capital = (word: string): string => word[0].toUpperCase() + word.slice(1);

/** Pulled or propelled, up or down: chooses the trial that does so, or makes one. */
export function WorkingSwitches() {
  const desk = useDesk();
  const scene = useSession((state) => state.scene);
  const trialId = useSession((state) => state.trialId);
  const compiled = useSession((state) => state.compiled);
  const working = useMemo(() => presentWorking({ scene, trialId, compiled }), [scene, trialId, compiled]);
  if (!working) return null;
  const turnLeading = () => desk.actions.setWorking({ leading: working.leading === 'first' ? 'last' : 'first' });
  const turnWay = () => desk.actions.setWorking({ towards: working.towards === 'end' ? 'start' : 'end' });
  const ways = ['up', 'down'].includes(working.way) ? ['up', 'down'] : ['out', 'back'];
  return (
    <div className="working-switches">
      {!working.turns && (
        <Segmented
          wide
          label="Ahead goes"
          value={working.leading}
          onChange={turnLeading}
          choices={[
            { value: 'first', label: 'First', spoken: 'the first vehicle' },
            { value: 'last', label: 'Last', spoken: 'the last vehicle' },
          ]}
        />
      )}
      {working.turns && (
        <Segmented
          wide
          label="The train is"
          value={working.propelled ? 'propelled' : 'pulled'}
          onChange={turnLeading}
          choices={[
            { value: 'pulled', label: 'Pulled' },
            { value: 'propelled', label: 'Propelled' },
          ]}
        />
      )}
      <Segmented
        wide
        label="The train goes"
        value={working.way}
        onChange={turnWay}
        choices={ways.map((way) => ({ value: way, label: capital(way) }))}
      />
    </div>
  );
}
