import type { SceneLineside } from '../../../state/lineside/index.ts';
import { EditField } from '../../controls/EditField.tsx';
import { Segmented } from '../../controls/Segmented.tsx';
import { highestMm, leastMm, lowestWallMm } from './bounds.ts';

type Wall = Extract<SceneLineside, { kind: 'wall' }>;

interface WallFieldsProps {
  readonly wall: Wall;
  readonly lengthMm: number;
  readonly onChange: (what: string, change: Partial<Wall>) => string | null;
}

/** Where a wall or platform runs along its track, on which side, how near and how high. */
export function WallFields({ wall, lengthMm, onChange }: WallFieldsProps) {
  const along = { measures: 'length', step: 10, least: 0, most: lengthMm } as const;
  return (
    <>
      <div className="fields two">
        <EditField label="From" {...along} value={wall.fromMm} onChange={(fromMm) => onChange('place', { fromMm })} />
        <EditField label="To" {...along} value={wall.toMm} onChange={(toMm) => onChange('place', { toMm })} />
      </div>
      <div className="fields two">
        <EditField
          label="Face from the middle"
          measures="length"
          step={1}
          least={leastMm}
          most={highestMm}
          value={wall.distanceMm}
          onChange={(distanceMm) => onChange('distance', { distanceMm })}
        />
        <EditField
          label="Top over the rail"
          measures="length"
          step={1}
          least={lowestWallMm}
          most={highestMm}
          value={wall.heightMm}
          onChange={(heightMm) => onChange('height', { heightMm })}
        />
      </div>
      <div className="room-choices">
        <Segmented
          label={`${wall.name} stands to the`}
          value={wall.side}
          onChange={(side) => void onChange('side', { side })}
          choices={[
            { value: 'left', label: 'left' },
            { value: 'right', label: 'right' },
          ]}
        />
      </div>
    </>
  );
}
