import { metresPerMile } from './constants.ts';
import { findUnit, readMeasure, type Unit, type Units } from './measure.ts';
import { formatNumber, thinSpace } from './number.ts';
import { accept, type Bounds, type Kind, longestText, type Reading, refuse } from './reading.ts';
import { plainSpelling } from './spelling.ts';

export type SpeedUnit = 'm/s' | 'mm/s' | 'in/s' | 'km/h' | 'mph';

const metric: Units = {
  'm/s': { shown: 'm/s', times: 1, over: 1 },
  'cm/s': { shown: 'cm/s', times: 1, over: 100 },
  'mm/s': { shown: 'mm/s', times: 1, over: 1000 },
  'in/s': { shown: 'in/s', times: 254, over: 10_000 },
  'ft/s': { shown: 'ft/s', times: 3048, over: 10_000 },
};

const kilometresAnHour: Unit = { shown: 'km/h', times: 1, over: 3.6 };
const milesAnHour: Unit = { shown: 'mph', times: metresPerMile, over: 3600 };

/** Speeds of the real railway, by spelling; on a model they mean scale speed. */
const prototype: Units = {
  'km/h': kilometresAnHour,
  kmh: kilometresAnHour,
  kph: kilometresAnHour,
  mph: milesAnHour,
};

const kind: Kind = { called: 'a speed', examples: '0.2 m/s, 200 mm/s, 8 in/s, 60 km/h or 40 mph' };

export interface SpeedOptions extends Bounds {
  /** N of the scale 1:N, by which km/h and mph are scale speeds. Without it they are refused. */
  readonly scale?: number;
  /** What a number without a unit is in; without it such a number is refused. */
  readonly unit?: SpeedUnit;
}

/** Reads a speed such as `0.2 m/s`, `200mm/s`, `60 km/h` or `scale 40 mph`. The value is the model's own, m/s. */
export function parseSpeed(text: string, options: SpeedOptions = {}): Reading {
  if (text.length > longestText) return refuse(text, 'it is too long for one speed', kind);
  const plain = plainSpelling(text).replace(/ ?\/ ?(?=[smh])/gi, '/');
  const spoken = plain.replace(/^scale /i, '').replace(/ ?\bscale (?=[kmp])/i, ' ');
  const asked = spoken !== plain;
  const scaled = scaledUnits(options.scale);
  const bare = options.unit === undefined ? undefined : findUnit({ ...metric, ...scaled }, options.unit);
  const measure = readMeasure(spoken, { units: asked ? scaled : { ...metric, ...scaled }, bare });
  if (!measure.ok) {
    const withoutScale = options.scale === undefined && /(km\/?h|kph|mph)$/i.test(spoken);
    return refuse(text, withoutScale ? 'km/h and mph need a scale, and none is known here' : measure.why, kind);
  }
  const isScaled = Object.values(scaled).includes(measure.unit);
  const written = isScaled ? `scale ${measure.read} at 1:${options.scale}` : measure.read;
  const other =
    isScaled || options.scale === undefined
      ? formatSpeed(measure.value, { unit: measure.unit.shown === 'mm/s' ? 'm/s' : 'mm/s' })
      : formatSpeed(measure.value, { unit: 'km/h', scale: options.scale });
  return accept(text, { value: measure.value, written, other }, options, kind, (value) => formatSpeed(value));
}

function scaledUnits(scale: number | undefined): Units {
  if (scale === undefined) return {};
  const byUnit = new Map<Unit, Unit>();
  for (const unit of [kilometresAnHour, milesAnHour]) byUnit.set(unit, { ...unit, over: unit.over * scale });
  return Object.fromEntries(Object.entries(prototype).map(([spelling, unit]) => [spelling, byUnit.get(unit)!]));
}

export interface SpeedStyle {
  /** Default m/s. km/h and mph are scale speeds and need `scale`. */
  readonly unit?: SpeedUnit;
  /** N of the scale 1:N. */
  readonly scale?: number;
  /** Decimals. Default: up to 3 for m/s, none for mm/s and scale speeds' tenths kept, 1 for in/s. */
  readonly digits?: number;
}

/** Writes a model's speed given in m/s: `0.2 m/s`, `200 mm/s`, `62.6 km/h` (scale, with `scale`). */
export function formatSpeed(metresPerSecond: number, style: SpeedStyle = {}): string {
  const unit = style.unit ?? 'm/s';
  const found = metric[unit] ?? scaledUnits(style.scale)[unit];
  // Without a scale a scale speed is not known: say so as for any number that is not there.
  if (!found) return '–';
  const usual = { 'm/s': 3, 'mm/s': 0, 'in/s': 1, 'km/h': 1, mph: 1 }[unit];
  const number = formatNumber((metresPerSecond * found.over) / found.times, {
    digits: style.digits ?? usual,
    trim: style.digits === undefined,
  });
  return number === '–' ? number : number + thinSpace + unit;
}
