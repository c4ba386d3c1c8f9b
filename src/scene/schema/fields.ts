import { z } from 'zod';
import { bounds } from './bounds.ts';

// A page that forbids code from text (a strict content security policy) must still be able to open a scene.
z.config({ jitless: true });

/** A number within bounds, with what it means and an example of it. */
export const quantity = (least: number, most: number, about: string, example: number) =>
  z
    .number()
    .min(least)
    .max(most)
    .meta({ description: about, examples: [example] });

/** A length greater than nothing, mm. */
export const positiveMm = (most: number, about: string, example: number) => quantity(0.01, most, about, example);

/** A whole number within bounds. */
export const whole = (least: number, most: number, about: string, example: number) =>
  z
    .int()
    .min(least)
    .max(most)
    .meta({ description: about, examples: [example] });

/** One of a few words. */
export const oneOf = <const W extends readonly [string, ...string[]]>(words: W, about: string) =>
  z.enum(words).meta({ description: about, examples: [words[0]] });

export const yesOrNo = (about: string) => z.boolean().meta({ description: about, examples: [true] });

/** A name that people read. */
export const named = (about: string, example: string) =>
  z
    .string()
    .min(1)
    .max(bounds.name)
    .meta({ description: about, examples: [example] });

/** A short name that other parts of the file refer to. */
export const idText = (about: string, example: string) =>
  z
    .string()
    .min(1)
    .max(bounds.id)
    .regex(/^[a-z0-9][a-z0-9-]*$/)
    .meta({ description: about, examples: [example] });

/** A field that may be left out, but not be null. */
export const maybe = z.exactOptional;

/** True when exactly one of the named fields is there. */
const exactlyOne = (value: object, keys: readonly string[]): boolean => keys.filter((key) => key in value).length === 1;

/** Asks for exactly one field of each group; the groups also go into the JSON Schema. */
export function either<S extends z.ZodObject>(schema: S, ...groups: readonly (readonly string[])[]): S {
  let checked = schema;
  for (const keys of groups) {
    checked = checked.refine((value) => exactlyOne(value, keys), { message: `either ${keys.join(' or ')}` });
  }
  return checked.meta({ either: groups });
}
