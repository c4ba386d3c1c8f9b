import { parseLength } from '../../../core/units/index.ts';
import { isByLevel, type ReadingKind } from '../../../state/survey/index.ts';
import { Segmented } from '../../controls/Segmented.tsx';
import { TypedField } from '../../controls/TypedField.tsx';
import { useSurvey, useSurveyActions } from './useSurvey.ts';

/** How the instrument in hand is set up. */
export function ToolFields({ kind }: { readonly kind: ReadingKind }) {
  const tool = useSurvey((state) => state.tools[kind]);
  const { setTool } = useSurveyActions();
  const along = kind === 'grade';
  const level = isByLevel(kind);
  const length = (text: string, take: (mm: number) => void, least = 0): string | null => {
    const read = parseLength(text);
    if (!read.ok) return read.message;
    if (read.value * 1000 < least) return `It has to be at least ${least} mm.`;
    take(Math.round(read.value * 1e7) / 1e4);
    return null;
  };
  const plain = (text: string, take: (value: number) => void, least: number): string | null => {
    const value = Number(text.replace(',', '.').replace(/[%°]|mm/g, ''));
    if (text === '' || !Number.isFinite(value) || value < least) return `Write a number of at least ${least}.`;
    take(value);
    return null;
  };
  return (
    <>
      {level && (
        <div className="survey-switches">
          <Segmented
            label="The level shows"
            choices={[
              { value: 'percent', label: '%', spoken: 'per cent' },
              { value: 'degree', label: '°', spoken: 'degrees' },
            ]}
            value={tool.unit}
            onChange={(unit) => setTool(kind, { unit })}
          />
          {along && (
            <Segmented
              label="Where the level stands"
              choices={[
                { value: 'spans', label: 'between supports' },
                { value: 'supports', label: 'over supports' },
              ]}
              value={tool.places}
              onChange={(places) => setTool(kind, { places })}
              wide
            />
          )}
        </div>
      )}
      <div className="sheet-pair">
        {(along || kind === 'gap') && (
          <TypedField
            className="sheet-field"
            label={along ? 'Length of the level' : 'Length of the straightedge'}
            value={String(tool.baseMm)}
            unit="mm"
            onTake={(text) => length(text, (baseMm) => setTool(kind, { baseMm }), 10)}
          />
        )}
        {kind === 'height' && (
          <TypedField
            className="sheet-field"
            label="Counted from"
            value={tool.line}
            placeholder="datum of the plan"
            onTake={(line) => {
              setTool(kind, { line });
              return null;
            }}
          />
        )}
        {kind === 'rise' && (
          <>
            <TypedField
              className="sheet-field"
              label="Supports further on"
              value={String(tool.further)}
              onTake={(text) => plain(text, (value) => setTool(kind, { further: Math.round(value) }), 1)}
            />
            <TypedField
              className="sheet-field"
              label="Board not in the reading"
              value={String(tool.boardMm)}
              unit="mm"
              onTake={(text) => length(text, (boardMm) => setTool(kind, { boardMm }))}
            />
          </>
        )}
        <TypedField
          className="sheet-field"
          label="Smallest step it shows"
          value={String(tool.step)}
          unit={level ? (tool.unit === 'degree' ? '°' : '%') : 'mm'}
          onTake={(text) => plain(text, (step) => setTool(kind, { step }), 0)}
        />
      </div>
      {kind === 'cross' && (
        <p className="quiet">
          Across both rails, looking along the track: plus where the right rail is the higher one. Tells twist; heights
          need readings along the track besides.
        </p>
      )}
      {kind === 'height' && tool.line !== '' && (
        <p className="quiet">
          Height of the rail top against “{tool.line}”: below a laser line it is written with a minus.
        </p>
      )}
    </>
  );
}
