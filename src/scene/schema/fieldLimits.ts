import { sceneJsonSchema } from './jsonSchema.ts';

/** What the format says of a number: what it may be, ends included, and what it means. */
export interface FieldLimits {
  readonly least: number;
  readonly most: number;
  readonly about: string;
}

/**
 * Limits of a number field by the way to it in the format, "*" standing for any item of a list: "stock/*" + "/drive/stallForceN". Throws
 * RangeError when the format has no such number.
 */
export function fieldLimits(way: string): FieldLimits {
  let schema = sceneJsonSchema();
  for (const step of way.split('/')) {
    const next = step === '*' ? schema.items : schema.properties?.[step];
    if (next === undefined) throw new RangeError(`The format has no "${way}".`);
    schema = next;
  }
  const { minimum, maximum, description = '' } = schema;
  if (minimum === undefined || maximum === undefined) throw new RangeError(`"${way}" is no number.`);
  return { least: minimum, most: maximum, about: description };
}
