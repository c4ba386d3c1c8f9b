import { type Address, itemName } from '../address.ts';
import { isRecord } from '../record.ts';
import { type JsonSchema, sceneJsonSchema } from './jsonSchema.ts';
import type { Scene } from './schema.ts';

/** A number of a scene that can be changed, swept or be uncertain. */
export interface SceneQuantity {
  readonly at: Address;
  readonly value: number;
  /** What the file allows, ends included, in the unit that ends the field's name. */
  readonly least: number;
  readonly most: number;
  /** Only whole numbers. */
  readonly whole: boolean;
  /** What it means, as the format's description says. */
  readonly about: string;
  /** What it belongs to, from the outside in, as people call it: "Gill line", "mouth". */
  readonly of: readonly string[];
}

/** Parts of a scene that are only for the picture, or say what the rest is made for: no study varies them. */
const fixed = new Set(['gradewright', 'scale', 'room', 'surveys', 'tour', 'variants', 'stepMs', 'frameMs']);

/** Every number of a scene that a study can vary, in the order of the file. */
export function sceneQuantities(scene: Scene): SceneQuantity[] {
  const out: SceneQuantity[] = [];
  collect(scene, sceneJsonSchema(), [], [], out);
  return out;
}

function collect(
  value: unknown,
  schema: JsonSchema,
  way: readonly string[],
  of: readonly string[],
  out: SceneQuantity[],
): void {
  const fits = alternative(schema, value);
  if (typeof value === 'number') {
    const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = fits;
    out.push({
      at: way.join('/'),
      value,
      least: minimum,
      most: maximum,
      whole: fits.type === 'integer',
      about: fits.description ?? schema.description ?? '',
      of,
    });
  } else if (Array.isArray(value)) {
    const items = fits.items;
    if (items === undefined) return;
    value.forEach((item, index) => {
      const name = itemName(item, index);
      collect(item, items, [...way, name], [...of, spoken(item, way.at(-1) ?? '', name)], out);
    });
  } else if (isRecord(value)) {
    for (const [key, part] of Object.entries(value)) {
      const within = fits.properties?.[key];
      if (within === undefined || fixed.has(key) || key === 'support') continue;
      collect(part, within, [...way, key], of, out);
    }
  }
}

/** What people call an item of a list. */
function spoken(item: unknown, list: string, name: string): string {
  if (isRecord(item)) {
    if (typeof item.name === 'string') return item.name;
    if (typeof item.id === 'string') return item.id;
    if (typeof item.support === 'number') return `support ${item.support}`;
    if (typeof item.kind === 'string') return `${item.kind} ${name}`;
  }
  return `${singular[list] ?? list} ${name}`;
}

const singular: Readonly<Record<string, string>> = {
  profile: 'profile point',
  supports: 'support',
  stripJoints: 'strip joint',
  orders: 'order',
  vehicles: 'vehicle',
};

/** Of several shapes that a field may have, the one that this value has. */
function alternative(schema: JsonSchema, value: unknown): JsonSchema {
  const shapes = schema.anyOf ?? schema.oneOf;
  if (shapes === undefined) return schema;
  return shapes.map((shape) => alternative(shape, value)).find((shape) => hasShape(shape, value)) ?? schema;
}

function hasShape(schema: JsonSchema, value: unknown): boolean {
  if (typeof value === 'number') return schema.type === 'number' || schema.type === 'integer';
  if (Array.isArray(value)) return schema.type === 'array';
  if (!isRecord(value) || schema.properties === undefined) return false;
  const { properties } = schema;
  return Object.entries(value).every(([key, part]) => {
    const field = properties[key];
    return field !== undefined && (field.const === undefined || field.const === part);
  });
}
