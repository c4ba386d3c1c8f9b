import { controlDefaults, forceDefaults } from '../../core/dynamics/index.ts';
import { flangeH0Mm, wheelsetMm } from '../../core/stock/index.ts';
import {
  bufferDefaults,
  couplingDefaults,
  type DefaultRow,
  driveDefaults,
  guideDefaults,
  massPerMm,
  rollingDefaults,
  tableGaugeMm,
  trialDefaults,
  vehicleDefaults,
} from '../../scene/defaults.ts';

const isRow = (value: unknown): value is DefaultRow =>
  typeof value === 'object' && value !== null && 'low' in value && 'high' in value && 'source' in value;

/** One table of Markdown: a line for every row of defaults, under the names that `nameOf` gives them. */
function table(rows: object, nameOf: (key: string) => string = (key) => key): string {
  const lines = Object.entries(rows).flatMap(([key, row]) =>
    isRow(row) ? [`| \`${nameOf(key)}\` | ${row.value} | ${row.low} to ${row.high} | ${row.source} |`] : [],
  );
  return ['| field | value | plausible | from |', '|---|---|---|---|', ...lines].join('\n');
}

const inUnits = (prefix: string, last: string) => (key: string) =>
  `${prefix}${key.charAt(0).toUpperCase()}${key.slice(1)}${last}`;

const span = ([low, high]: readonly [number, number]): string => `${low} to ${high}`;

/** The page docs/reference/defaults.md: every default of the program with its range and source, made from the tables themselves. */
export function defaultsPage(): string {
  const couplings = Object.entries(couplingDefaults).map(
    ([kind, rows]) => `### ${kind}\n\nCarried by: ${rows.mount}.\n\n${table(rows)}`,
  );
  const masses = massPerMm.map(([gauge, mass]) => `| ${gauge} | ${mass} |`);
  return `# Defaults

Made from the code by \`npm run schema\`; a test sees that it was. Every constant that a scene leaves out is taken from here. Lengths, heights and speeds are for
${tableGaugeMm} mm gauge; other gauges take them in proportion to their gauge. The range is what is plausible; studies of uncertainty draw from it. A source that begins with **assumption** is no
published measurement: where a verdict hangs on it, measure yours and write it into the scene.

## Vehicles

${table(vehicleDefaults)}

Mass left out is the least of NEM 302 (2015) for the length over buffers:

| gauge, mm | g for each mm |
|---|---|
${masses.join('\n')}

Axles of a rigid frame left out are three under a locomotive or tender and two under the rest. Wheels left out lie in the middle of the limits of NEM 310 (2009), in
H0: check gauge ${span(wheelsetMm[16.5].check)} mm, flange thickness ${span(flangeH0Mm.thickness)} mm, flange depth ${span(flangeH0Mm.depth)} mm.

## Rolling

${table(rollingDefaults, (key) => (key === 'breakaway' ? key : inUnits('rolling', '')(key)))}

## Buffers

${table(bufferDefaults)}

## Drive of a locomotive

${table(driveDefaults)}

## Couplings by kind

What two halves have in common is given for one half.

${couplings.join('\n\n')}

### guide of a close-coupling mechanism

${table(guideDefaults)}

## Trials

${table(trialDefaults)}

## Forces

${table(forceDefaults)}

### Controller that holds a speed

${table(controlDefaults)}
`;
}
