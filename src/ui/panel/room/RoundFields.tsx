import type { SceneRound } from '../../../state/room/index.ts';
import { EditField } from '../../controls/EditField.tsx';
import { farthestMm } from './farthest.ts';

interface RoundFieldsProps {
  readonly of: SceneRound;
  readonly onChange: (of: SceneRound) => string | null;
}

/** Where something round has its middle, and how far it is across. */
export function RoundFields({ of, onChange }: RoundFieldsProps) {
  const place = { measures: 'length', step: 10, least: -farthestMm, most: farthestMm } as const;
  return (
    <div className="fields three">
      <EditField label="Middle east" {...place} value={of.xMm} onChange={(xMm) => onChange({ ...of, xMm })} />
      <EditField label="Middle north" {...place} value={of.yMm} onChange={(yMm) => onChange({ ...of, yMm })} />
      <EditField
        label="Across"
        {...place}
        least={10}
        value={of.diameterMm}
        onChange={(diameterMm) => onChange({ ...of, diameterMm })}
      />
    </div>
  );
}
