import { cos, sin, tan } from '../../core/math/index.ts';
import { DrawingWriter } from './drawingWriter.ts';
import { CentrelineError, type Drawing, type DrawnPoint } from './types.ts';

/** A pair of group code and value, and its line in the file. */
interface Group {
  readonly code: number;
  readonly value: string;
  readonly line: number;
}

/** Length of a drawing unit, mm, by the number of $INSUNITS: inches, feet, millimetres, centimetres, metres. */
const insunitsMm: Readonly<Record<string, number>> = { 1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000 };

/** LINE, ARC, LWPOLYLINE and POLYLINE of a drawing-exchange file in text; blocks are passed over. Throws CentrelineError when it is no such file. */
export function readDxf(text: string): Drawing {
  const groups = groupsOf(text);
  const writer = new DrawingWriter();
  const units = groups.findIndex(({ code, value }) => code === 9 && value === '$INSUNITS');
  const named = units < 0 ? undefined : insunitsMm[groups[units + 1]?.value ?? ''];
  if (named === undefined) writer.assume('The drawing does not name a unit that is known: taken as mm.');
  const mm = named ?? 1;
  const from = groups.findIndex(
    ({ code, value }, i) => code === 2 && value === 'ENTITIES' && groups[i - 1]?.value === 'SECTION',
  );
  if (from < 0) throw new CentrelineError('There is no section ENTITIES in the drawing.');
  const ends = groups.findIndex(({ code, value }, i) => i > from && code === 0 && value === 'ENDSEC');
  let polyline: { readonly own: readonly Group[]; readonly points: DrawnPoint[] } | null = null;
  for (const entity of entitiesOf(groups.slice(from + 1, ends < 0 ? undefined : ends))) {
    const [{ value: kind, line }] = entity;
    const points = (): DrawnPoint[] => {
      switch (kind) {
        case 'LINE':
          return lineOf(entity, mm);
        case 'ARC':
          return arcOf(entity, mm);
        case 'LWPOLYLINE':
          return closed(lightPolyline(entity, mm), entity);
        default:
          return [];
      }
    };
    if (kind === 'POLYLINE') polyline = { own: entity, points: [] };
    else if (kind === 'VERTEX') polyline?.points.push(...vertexOf(entity, mm));
    else if (kind === 'SEQEND' && polyline !== null) {
      put(writer, closed(polyline.points, polyline.own), polyline.own[0].line, polyline.own);
      polyline = null;
    } else if (['LINE', 'ARC', 'LWPOLYLINE'].includes(kind)) put(writer, points(), line, entity);
    else if (kind !== 'SEQEND') writer.wrong(line, `a ${kind.slice(0, 30)}, which is no line that is read here`);
  }
  return writer.drawing();
}

function put(writer: DrawingWriter, points: readonly DrawnPoint[], line: number, entity: readonly Group[]): void {
  const numbers = points.flatMap(({ xMm, yMm, zMm = 0, bulge = 0 }) => [xMm, yMm, zMm, bulge]);
  if (points.length < 2 || !numbers.every(Number.isFinite)) {
    writer.wrong(line, `a ${entity[0].value} without the numbers of two points`);
    return;
  }
  // An arc or plane polyline drawn from below has its x the other way round.
  const mirrored = numberOf(entity, 230, 1) < 0 && entity[0].value !== 'LINE';
  // A drawing in plan has every height 0, and so none.
  const inPlan = points.every(({ zMm }) => zMm === 0);
  writer.add(
    points.map(({ xMm, yMm, zMm, bulge }) => ({
      xMm: mirrored ? -xMm : xMm,
      yMm,
      ...(!inPlan && zMm !== undefined && { zMm }),
      ...(bulge !== undefined && { bulge: mirrored ? -bulge : bulge }),
    })),
  );
}

function groupsOf(text: string): Group[] {
  const rows = text.split(/\r\n|\r|\n/);
  const groups: Group[] = [];
  for (let i = 0; i + 1 < rows.length; i += 2) {
    const code = Number(rows[i].trim());
    if (!Number.isInteger(code) || rows[i].trim() === '') {
      throw new CentrelineError(
        `Line ${i + 1} should be a group code and is "${rows[i].slice(0, 30)}": no drawing-exchange file in text.`,
      );
    }
    groups.push({ code, value: rows[i + 1].trim(), line: i + 1 });
  }
  return groups;
}

function entitiesOf(groups: readonly Group[]): Group[][] {
  const entities: Group[][] = [];
  for (const group of groups) {
    if (group.code === 0) entities.push([group]);
    else entities[entities.length - 1]?.push(group);
  }
  return entities;
}

/** The number of a code of an entity; NaN when it must be there and is not. */
function numberOf(entity: readonly Group[], code: number, otherwise = Number.NaN): number {
  const found = entity.find((group) => group.code === code);
  return found === undefined ? otherwise : found.value === '' ? Number.NaN : Number(found.value);
}

const point = (x: number, y: number, z: number, bulge: number, mm: number): DrawnPoint => ({
  xMm: x * mm,
  yMm: y * mm,
  zMm: z * mm,
  ...(bulge !== 0 && { bulge }),
});

const lineOf = (entity: readonly Group[], mm: number): DrawnPoint[] => [
  point(numberOf(entity, 10), numberOf(entity, 20), numberOf(entity, 30, 0), 0, mm),
  point(numberOf(entity, 11), numberOf(entity, 21), numberOf(entity, 31, 0), 0, mm),
];

function arcOf(entity: readonly Group[], mm: number): DrawnPoint[] {
  const [x, y, radius, from, to] = [10, 20, 40, 50, 51].map((code) => numberOf(entity, code));
  const degree = Math.PI / 180;
  // Arcs run counter-clockwise, from the first angle to the second.
  const turn = (((to - from) % 360) + 360) % 360 || 360;
  // In two halves, because a bulge grows beyond bounds as an arc nears a full circle.
  return [0, 0.5, 1].map((share) => {
    const angle = (from + share * turn) * degree;
    const bulge = share === 1 ? 0 : tan((turn * degree) / 8);
    return point(x + radius * cos(angle), y + radius * sin(angle), 0, bulge, mm);
  });
}

function lightPolyline(entity: readonly Group[], mm: number): DrawnPoint[] {
  const z = numberOf(entity, 38, 0);
  const points: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of entity) {
    const last = points[points.length - 1];
    if (code === 10) points.push({ x: Number(value), y: Number.NaN, bulge: 0 });
    else if (code === 20 && last) last.y = Number(value);
    else if (code === 42 && last) last.bulge = Number(value);
  }
  return points.map(({ x, y, bulge }) => point(x, y, z, bulge, mm));
}

const vertexOf = (entity: readonly Group[], mm: number): DrawnPoint[] => [
  point(numberOf(entity, 10), numberOf(entity, 20), numberOf(entity, 30, 0), numberOf(entity, 42, 0), mm),
];

/** Bit 1 of code 70 closes a polyline. */
function closed(points: DrawnPoint[], entity: readonly Group[]): DrawnPoint[] {
  if (points.length < 2 || numberOf(entity, 70, 0) % 2 !== 1) return points;
  const { bulge: _, ...first } = points[0];
  return [...points, first];
}
