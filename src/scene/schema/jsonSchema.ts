import { z } from 'zod';
import { sceneSchema } from './schema.ts';

/** The part of JSON Schema (draft 2020-12) that the scene format uses. */
export interface JsonSchema {
  readonly title?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly pattern?: string;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly items?: JsonSchema;
  readonly oneOf?: readonly JsonSchema[];
  readonly anyOf?: readonly JsonSchema[];
  readonly allOf?: readonly JsonSchema[];
}

let made: JsonSchema | null = null;

/** The JSON Schema of the scene format, made from the code that checks scenes; made once, when first asked for. */
export function sceneJsonSchema(): JsonSchema {
  made ??= z.toJSONSchema(sceneSchema, { override: ({ jsonSchema }) => sayEither(jsonSchema) }) as JsonSchema;
  return made;
}

/** Turns "exactly one of these fields" into words of JSON Schema. */
function sayEither(node: Record<string, unknown>): void {
  const groups = node.either as readonly (readonly string[])[] | undefined;
  if (groups === undefined) return;
  delete node.either;
  node.allOf = groups.map((keys) => ({ oneOf: keys.map(having) }));
}

/** Spelt out, because some checkers pass over a bare "required". */
const having = (key: string): JsonSchema => ({ type: 'object', properties: { [key]: {} }, required: [key] });
