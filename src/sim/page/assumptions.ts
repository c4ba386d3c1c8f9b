import { forceDefaults } from '../../core/dynamics/index.ts';
import { formatLength, formatMass, formatNumber } from '../../core/units/index.ts';
import { couplingDefaults, driveDefaults, rollingDefaults, type Scene, tableGaugeMm } from '../../scene/index.ts';
import type { Assumption } from './types.ts';

const share = (value: number): string => formatNumber(value, { digits: 2 });
const range = ({ low, high }: { readonly low: number; readonly high: number }, words = share): string =>
  `${words(low)} to ${words(high)}`;

/** What the verdicts of a railway rest on besides its sizes: values taken where the scene has none, with their range and source, and what the scene gives itself. */
export function assumptions(scene: Scene): Assumption[] {
  const engines = scene.stock.flatMap(({ drive }) => (drive === undefined ? [] : [drive]));
  const grips = engines.map(({ adhesion }) => adhesion);
  const rolling = scene.stock.map(({ rollingPercent }) => rollingPercent);
  const percent = (value: number): string => `${formatNumber(value, { digits: 1 })} %`;
  const drags = [...new Set(scene.trials.map(({ forces }) => forces?.curveDrag ?? 'nominal'))];
  const { curveFriction, flangeFriction } = forceDefaults;
  return [
    {
      what: 'Rolling resistance, share of weight',
      ...given(rolling, rollingDefaults.percent, percent),
    },
    {
      what: 'Curve drag, where in its band',
      value: drags.join(', '),
      range: 'low, nominal, high: apart by a factor of three or more',
      source: forceDefaults.curveHighFactor.source,
    },
    {
      what: 'Sliding of wheels in curves, coefficient',
      value: share(curveFriction.value),
      range: range(curveFriction),
      source: curveFriction.source,
    },
    {
      what: 'Flanges under sideways coupler load, coefficient',
      value: share(flangeFriction.value),
      range: range(flangeFriction),
      source: flangeFriction.source,
    },
    { what: 'Grip of driven wheels, coefficient', ...given(grips, driveDefaults.adhesion, share) },
    ...couplingRows(scene),
    {
      what: 'Weights of vehicles',
      value: scene.stock.every(({ massG }) => massG !== undefined) ? 'all as weighed' : 'in part by the norm',
      range: `${formatMass(least(scene), { unit: 'g', digits: 0 })} to ${formatMass(greatest(scene), { unit: 'g', digits: 0 })}`,
      source: 'the railway’s own file; NEM 302 where it says nothing',
    },
  ];
}

/** How far what a scene gives itself and what it leaves to the table make up a value. */
function given(
  values: readonly (number | undefined)[],
  row: { readonly value: number; readonly low: number; readonly high: number; readonly source: string },
  words: (value: number) => string,
): Omit<Assumption, 'what'> {
  const own = values.flatMap((value) => (value === undefined ? [] : [value]));
  const taken = values.length - own.length;
  const [low, high] = [Math.min(...own), Math.max(...own)];
  const ownWords = own.length === 0 ? null : low === high ? words(low) : `${words(low)} to ${words(high)}`;
  const parts = [
    ...(ownWords === null ? [] : [`${ownWords} as given`]),
    ...(taken === 0 ? [] : [`${words(row.value)} assumed for ${taken} of ${values.length}`]),
  ];
  return { value: parts.join('; '), range: range(row, words), source: row.source };
}

function couplingRows({ couplings = [], scale }: Scene): Assumption[] {
  const size = scale.gaugeMm / tableGaugeMm;
  return couplings.flatMap(({ id, kind, facingHeightMm, headHeightToleranceMm }): Assumption[] => {
    const row = couplingDefaults[kind];
    const length = (mm: number): string => formatLength(mm / 1000, { unit: 'mm', digits: 1 });
    const facing = facingHeightMm ?? size * row.facingHeightMm.value;
    const tolerance = headHeightToleranceMm ?? size * row.headHeightToleranceMm.value;
    return [
      {
        what: `Heads of coupling “${id}” face each other over`,
        value: `${length(facing)}${facingHeightMm === undefined ? ' assumed' : ' as given'}, each head within ${length(tolerance)}`,
        range: range(row.facingHeightMm, (mm) => length(size * mm)),
        source: row.facingHeightMm.source,
      },
    ];
  });
}

const masses = ({ stock }: Scene): number[] =>
  stock.flatMap(({ massG }) => (massG === undefined ? [] : [massG / 1000]));
const least = (scene: Scene): number => Math.min(...masses(scene));
const greatest = (scene: Scene): number => Math.max(...masses(scene));
