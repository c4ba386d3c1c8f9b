import { useStore } from 'zustand';
import { coarsePitches, type Thread } from '../../../core/survey/index.ts';
import { parseLength } from '../../../core/units/index.ts';
import { useDesk } from '../../context.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { lengthShown, useShow } from '../../show.ts';

interface BuildFieldsProps {
  readonly part: 'heights' | 'pieces';
  /** The track has no supports of its own: how far apart they are is asked. */
  readonly assumed?: boolean;
}

/** The closest that supports stand, and the longest length taken, m. */
const [leastSpacing, most] = [0.02, 10];

/** With what heights are set, and what pieces are sawn from. */
export function BuildFields({ part, assumed = false }: BuildFieldsProps) {
  const { building, actions } = useDesk().building;
  const { sheet, every, thread } = useStore(building);
  const show = useShow();
  const field = (label: string, value: number, least: number, put: (metres: number) => void) => {
    const [figure, unit] = lengthShown(value, show).shown;
    return (
      <TypedField
        className="sheet-field"
        label={label}
        value={figure}
        unit={unit}
        onTake={(text) => {
          const read = parseLength(text, { unit: show.lengthUnit, least, most });
          if (!read.ok) return read.message;
          put(read.value);
          return null;
        }}
      />
    );
  };
  if (part === 'heights') {
    return (
      <div className="sheet-pair">
        <div className="sheet-field">
          <label htmlFor="build-thread">Set with</label>
          <select
            id="build-thread"
            value={thread ?? ''}
            onChange={(event) => actions.set({ thread: (event.target.value || null) as Thread | null })}
          >
            <option value="">risers and blocks</option>
            {Object.keys(coarsePitches).map((name) => (
              <option key={name} value={name}>
                nuts on {name}
              </option>
            ))}
          </select>
        </div>
        {assumed && field('A support every', every, leastSpacing, (metres) => actions.set({ every: metres }))}
      </div>
    );
  }
  return (
    <div className="sheet-pair">
      {field('Sheet, length', sheet.length, 0.1, (length) => actions.setSheet({ length }))}
      {field('Sheet, width', sheet.width, 0.1, (width) => actions.setSheet({ width }))}
      {field('Longest curved piece', sheet.longest, 0.05, (longest) => actions.setSheet({ longest }))}
      {field('Saw takes', sheet.kerf, 0, (kerf) => actions.setSheet({ kerf }))}
    </div>
  );
}
