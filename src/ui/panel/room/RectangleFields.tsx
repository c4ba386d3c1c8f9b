import type { Rectangle } from '../../../state/room/index.ts';
import { EditField } from '../../controls/EditField.tsx';
import { farthestMm } from './farthest.ts';

interface RectangleFieldsProps {
  readonly of: Rectangle;
  readonly onChange: (of: Rectangle) => string | null;
}

/** Where a thing square to the room lies, and its size in plan. */
export function RectangleFields({ of, onChange }: RectangleFieldsProps) {
  const place = { measures: 'length', step: 10, least: -farthestMm, most: farthestMm } as const;
  const size = { ...place, least: 10 };
  return (
    <div className="fields four">
      <EditField label="East" {...place} value={of.xMm} onChange={(xMm) => onChange({ ...of, xMm })} />
      <EditField label="North" {...place} value={of.yMm} onChange={(yMm) => onChange({ ...of, yMm })} />
      <EditField
        label="East–west"
        {...size}
        value={of.lengthMm}
        onChange={(lengthMm) => onChange({ ...of, lengthMm })}
      />
      <EditField
        label="North–south"
        {...size}
        value={of.widthMm}
        onChange={(widthMm) => onChange({ ...of, widthMm })}
      />
    </div>
  );
}
