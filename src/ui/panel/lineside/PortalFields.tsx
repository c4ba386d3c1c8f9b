import type { SceneLineside } from '../../../state/lineside/index.ts';
import { EditField } from '../../controls/EditField.tsx';
import { farthestAsideMm, highestMm, leastMm } from './bounds.ts';

type Portal = Extract<SceneLineside, { kind: 'portal' }>;

/** How far a portal reaches along the track where the file does not say, mm. */
const usualDepthMm = 10;

interface PortalFieldsProps {
  readonly portal: Portal;
  readonly lengthMm: number;
  readonly onChange: (what: string, change: Partial<Portal>) => string | null;
}

/** Where a portal stands over its track, and how much it leaves free. */
export function PortalFields({ portal, lengthMm, onChange }: PortalFieldsProps) {
  const size = { measures: 'length', step: 1, least: leastMm, most: highestMm } as const;
  return (
    <>
      <div className="fields three">
        <EditField
          label="Along the track"
          measures="length"
          step={10}
          least={0}
          most={lengthMm}
          value={portal.atMm}
          onChange={(atMm) => onChange('place', { atMm })}
        />
        <EditField
          label="Clear width"
          {...size}
          value={portal.widthMm}
          onChange={(widthMm) => onChange('width', { widthMm })}
        />
        <EditField
          label="Clear height"
          {...size}
          value={portal.heightMm}
          onChange={(heightMm) => onChange('height', { heightMm })}
        />
      </div>
      <div className="fields three">
        <EditField
          label="Deep"
          {...size}
          value={portal.depthMm ?? usualDepthMm}
          onChange={(depthMm) => onChange('depth', { depthMm })}
        />
        <EditField
          label="Middle to the left"
          measures="length"
          step={1}
          least={-farthestAsideMm}
          most={farthestAsideMm}
          value={portal.offsetMm ?? 0}
          onChange={(offsetMm) => onChange('offset', { offsetMm })}
        />
      </div>
    </>
  );
}
