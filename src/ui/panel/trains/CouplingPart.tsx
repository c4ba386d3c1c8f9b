import { useId, useState } from 'react';
import {
  addCoupling,
  couplingKinds,
  couplingNumbers,
  type SceneCoupling,
  type SceneVehicle,
  type StockNumber,
  setCoupling,
  setCouplingField,
  setCouplingKind,
} from '../../../state/stock/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useDesk } from '../../context.tsx';
import { Refusable } from '../../controls/Refusable.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { NumberFields } from './NumberFields.tsx';

interface CouplingPartProps {
  readonly scene: Scene;
  readonly kind: SceneVehicle;
}

type End = 'front' | 'rear';

const spoken = (kind: string): string => kind.replaceAll('-', ' ');

/** What couples the chosen vehicle, at one end or both, and the numbers of it: they hold wherever it is fitted. */
export function CouplingPart({ scene, kind }: CouplingPartProps) {
  const { actions } = useDesk();
  const [end, setEnd] = useState<End>('front');
  const id = useId();
  const couplings = scene.couplings ?? [];
  const frontId = kind.frontCoupling ?? kind.coupling;
  const rearId = kind.rearCoupling ?? kind.coupling;
  const split = frontId !== rearId;
  const fittedId = end === 'rear' ? rearId : frontId;
  const fitted = couplings.find((one) => one.id === fittedId);
  const fitOn = (couplingId: string, at: End | 'both') =>
    actions.attempt(`coupling of ${kind.name}`, (now) => setCoupling(now, kind.id, at, couplingId));
  const another = () => {
    const like: SceneCoupling = fitted ?? { id: 'coupling', kind: 'hook-and-bar' };
    return actions.attempt(`coupling of its own on ${kind.name}`, (now) => {
      const more = addCoupling(now, like);
      const made = more.couplings?.at(-1);
      return made === undefined ? more : setCoupling(more, kind.id, split ? end : 'both', made.id);
    });
  };
  const put = ({ field, label }: StockNumber, value: number | undefined) =>
    fitted === undefined
      ? null
      : actions.attempt(`${label.toLowerCase()} of coupling ${fitted.id}`, (now) =>
          setCouplingField(now, fitted.id, field, value),
        );
  return (
    <>
      <h3>Coupling</h3>
      <div className="switches">
        <Segmented
          label="Which end"
          value={end}
          onChange={setEnd}
          choices={[
            { value: 'front', label: 'Front' },
            { value: 'rear', label: 'Rear' },
          ]}
        />
        <div className="sheet-field">
          <label htmlFor={`${id}-fitted`}>Fitted</label>
          <select
            id={`${id}-fitted`}
            value={fitted?.id ?? ''}
            onChange={(event) => void fitOn(event.target.value, split ? end : 'both')}
          >
            {fitted === undefined && <option value="">as usual</option>}
            {couplings.map((one) => (
              <option key={one.id} value={one.id}>
                {one.id}: {spoken(one.kind)}
              </option>
            ))}
          </select>
        </div>
        {fitted && (
          <div className="sheet-field">
            <label htmlFor={`${id}-kind`}>Kind</label>
            <select
              id={`${id}-kind`}
              value={fitted.kind}
              onChange={(event) => {
                const wanted = couplingKinds.find((one) => one === event.target.value);
                if (wanted)
                  actions.attempt(`kind of coupling ${fitted.id}`, (now) => setCouplingKind(now, fitted.id, wanted));
              }}
            >
              {couplingKinds.map((one) => (
                <option key={one} value={one}>
                  {spoken(one)}
                </option>
              ))}
            </select>
          </div>
        )}
      </div>
      {fitted && <NumberFields numbers={couplingNumbers(scene, fitted)} put={put} />}
      <Refusable
        acts={[
          { words: 'A coupling of its own', spoken: `Give ${kind.name} a coupling of its own`, act: another },
          ...(split && fittedId !== undefined
            ? [{ words: 'The same at both ends', act: () => fitOn(fittedId, 'both') }]
            : fittedId !== undefined && couplings.length > 1
              ? [
                  {
                    words: `Another at the ${end}`,
                    act: () => fitOn(couplings.find((one) => one.id !== fittedId)?.id ?? fittedId, end),
                  },
                ]
              : []),
        ]}
      />
    </>
  );
}
