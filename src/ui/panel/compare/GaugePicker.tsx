import { riskTitle } from '../../../core/findings/index.ts';
import { risks } from '../../../core/risks/index.ts';
import type { Gauge } from '../../../state/study/index.ts';

interface GaugePickerProps {
  readonly gauge: Gauge;
  readonly onChoose: (gauge: Gauge) => void;
}

/** Whether everything decides, or one risk alone. */
export function GaugePicker({ gauge, onChoose }: GaugePickerProps) {
  return (
    <div className="sheet-field">
      <label htmlFor="study-gauge">What decides</label>
      <select id="study-gauge" value={gauge} onChange={(event) => onChoose(event.target.value as Gauge)}>
        <option value="all">Everything: it arrives and nothing fails</option>
        {risks.map(({ id }) => (
          <option key={id} value={id}>
            {riskTitle(id)} alone
          </option>
        ))}
      </select>
    </div>
  );
}
