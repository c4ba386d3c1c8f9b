import { findingUnit } from '../../../core/findings/index.ts';
import type { Finding } from '../../../core/findings/types.ts';
import type { Comparison, ValuePart } from '../../../core/risks/types.ts';
import { marginFigure, marginUnit } from '../../band/words.ts';
import { useSession } from '../../context.tsx';
import { useShow } from '../../show.ts';

const partWords: Readonly<Record<ValuePart['label'], string>> = {
  'fitted-heads': 'heads as fitted',
  'track-geometry': 'bend of the track',
  tolerance: 'play and fitting',
  'lateral-throw': 'throw in the curve',
  grade: 'grade',
  rolling: 'rolling',
  curve: 'curve',
};

/** The same moment judged another way. */
const compareWords: Readonly<Record<Comparison['label'], string>> = {
  'without-cant': 'without the cant',
  'at-rest': 'at rest',
  'axle-sum': 'both wheels together',
  'dragged-up': 'dragged up by its mate',
};

/** The part that the track brings in carries the mark while the finding fails: it is what can be mended. */
function toneOf({ label }: ValuePart, { verdict }: Finding): string {
  if (label === 'tolerance') return 'part-light';
  if (label === 'track-geometry' || label === 'lateral-throw') return verdict === 'fails' ? 'part-mark' : 'part-dark';
  return 'part-plain';
}

const width = 148;

interface OffsetPartsProps {
  readonly finding: Finding;
  readonly title: string;
}

/** A value laid end to end from its parts, against the limit that holds; the value with the tried cure dashed beneath. */
export function OffsetParts({ finding, title }: OffsetPartsProps) {
  const show = useShow();
  const cured = useSession((state) => {
    const worst = state.ghost?.result.risks.find((series) => series.risk === finding.risk)?.worst;
    // With the cure another way to fail may be the nearest, whose value is in another unit and no length of this bar.
    const alike = worst && findingUnit({ risk: finding.risk, governing: worst.governing }) === findingUnit(finding);
    return alike ? worst.value : null;
  });
  // A finding's value may be of another kind than its risk's margin: a force beside lengths.
  const unit = findingUnit(finding);
  const parts = finding.parts.filter((part) => part.value !== 0);
  const reach = Math.max(
    finding.value,
    finding.limit,
    parts.reduce((sum, part) => sum + Math.abs(part.value), 0),
    cured ?? 0,
  );
  if (!(reach > 0)) return null;
  const scale = width / reach;
  const figure = (value: number) => marginFigure(value, unit, show).replace(/^\+/, '');
  let at = 0;
  const bars = parts.map((part) => {
    const from = at;
    at += Math.abs(part.value) * scale;
    return { part, from, to: at, tone: toneOf(part, finding) };
  });
  const limitAt = finding.limit * scale;
  return (
    <div className="offset-parts">
      <p className="name">
        {title}, {marginUnit(unit, show)}
      </p>
      <svg
        width={width}
        height={cured === null ? 36 : 52}
        role="img"
        aria-label={`${figure(finding.value)}, ${figure(finding.limit)} holds`}
      >
        {bars.length === 0 && <rect className="part-plain" x={0} y={14} width={finding.value * scale} height={16} />}
        {bars.map(({ part, from, to, tone }) => (
          <rect key={part.label} className={tone} x={from} y={14} width={Math.max(0.5, to - from)} height={16} />
        ))}
        <path className="limit" d={`M${limitAt} 9V35`} />
        <text x={Math.min(width - 26, Math.max(24, limitAt))} y={7} textAnchor="middle">
          {figure(finding.limit)} holds
        </text>
        {cured !== null && <path className="cured" d={`M0 39H${cured * scale}`} />}
        {cured !== null && (
          <text className="cured-words" x={0} y={51}>
            {figure(cured)} with the cure
          </text>
        )}
      </svg>
      <ul>
        {bars.map(({ part, tone }) => (
          <li key={part.label}>
            <i className={tone} />
            {partWords[part.label]}
            <b>{part.label === 'tolerance' ? `± ${figure(part.value)}` : figure(part.value)}</b>
          </li>
        ))}
        <li className={finding.verdict === 'fails' ? 'total fails' : 'total'}>
          as it stands
          <b>{figure(finding.value)}</b>
        </li>
        {finding.compare?.map(({ label, value }) => (
          <li key={label} className="otherwise">
            {compareWords[label]}
            <b>{figure(value)}</b>
          </li>
        ))}
      </ul>
    </div>
  );
}
