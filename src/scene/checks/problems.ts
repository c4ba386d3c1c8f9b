import type { z } from 'zod';
import { type JsonSchema, sceneJsonSchema } from '../schema/jsonSchema.ts';
import { nearestWords } from './nearestWord.ts';

/** What is wrong at one place of a scene file, in words for its author. */
export interface Problem {
  /** `trains[0].vehicles[3].stock`; empty for the file as a whole. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
  /** Something that could stand there, as it would be written. */
  readonly example: string;
  /** A line of the file and, under it, a caret at the place: where the text itself breaks off being JSON. */
  readonly excerpt?: readonly [line: string, caret: string];
}

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** Longest piece of the file that a message repeats. */
const longestQuote = 60;

/** A path as people write it. */
export function pathText(path: Path): string {
  let text = '';
  for (const key of path) {
    if (typeof key === 'number') text += `[${key}]`;
    else text += text === '' ? quoted(String(key)) : `.${quoted(String(key))}`;
  }
  return text;
}

const quoted = (text: string): string => (text.length > longestQuote ? `${text.slice(0, longestQuote)}…` : text);

/** A value of the file, short enough for a message. */
export function valueText(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'string') return JSON.stringify(quoted(value));
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return value.length === 1 ? 'a list of 1 entry' : `a list of ${value.length} entries`;
  if (typeof value !== 'object') return `a ${typeof value}`;
  const keys = Object.keys(value);
  const shown = keys.slice(0, 6).map((key) => quoted(key));
  return keys.length === 0 ? 'an empty object' : `an object with ${shown.join(', ')}${keys.length > 6 ? ', …' : ''}`;
}

/** Every problem that a check of the shape found, in the file's order as far as the checker keeps it. */
export function problemsOf(issues: readonly Issue[], input: unknown): Problem[] {
  const schema = sceneJsonSchema();
  return issues.flatMap((issue) => explain(issue, [], input, schema));
}

function explain(issue: Issue, before: Path, input: unknown, schema: JsonSchema): Problem[] {
  const path = [...before, ...issue.path];
  const value = valueAt(input, path);
  const node = nodeAt(schema, path, input);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => misspelt(key, path, node));
  }
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const branch = deepest(issue.errors);
    if (branch !== null) return branch.flatMap((inner) => explain(inner as Issue, path, input, schema));
  }
  if (issue.code === 'custom') return [pickOne(issue, path, value, node)];
  const allowed =
    node === null ? issue.message : issue.code === 'invalid_union' ? kindsText(schema, path, input) : allowedText(node);
  return [{ path: pathText(path), found: valueText(value), allowed, example: exampleText(node) }];
}

/** Fields that exclude or need each other. The check's own message names them. */
function pickOne(issue: Issue, path: Path, value: unknown, node: JsonSchema | null): Problem {
  const known = node?.properties ?? {};
  const fields = issue.message.split(/[^A-Za-z]+/).filter((word) => Object.hasOwn(known, word));
  const there = fields.filter((field) => typeof value === 'object' && value !== null && Object.hasOwn(value, field));
  const first = fields[0];
  return {
    path: pathText(path),
    found: there.length === 0 ? `no ${fields.join(' and no ')}` : there.join(' and '),
    allowed: issue.message,
    example: first === undefined ? '' : `"${first}": ${exampleText(known[first]) || '{}'}`,
  };
}

/** The kinds that a list takes, where the kind found is none of them. */
function kindsText(schema: JsonSchema, path: Path, input: unknown): string {
  const list = nodeAt(schema, path.slice(0, -1), input);
  const kinds = (list?.oneOf ?? list?.anyOf ?? []).flatMap((branch) => branch.properties?.kind?.const ?? []);
  if (kinds.length > 0) return `one of ${kinds.map((kind) => JSON.stringify(kind)).join(', ')}`;
  const node = nodeAt(schema, path, input);
  return node === null ? 'something else' : allowedText(node);
}

/** The branch of a union that the author most likely meant: the one of the same type as what was found. */
function deepest(branches: readonly (readonly z.core.$ZodIssue[])[]): readonly z.core.$ZodIssue[] | null {
  const fitting = branches.filter((issues) =>
    issues.every(
      (issue) =>
        issue.path.length > 0 ||
        issue.code === 'unrecognized_keys' ||
        issue.code === 'custom' ||
        issue.code === 'too_small' ||
        issue.code === 'too_big',
    ),
  );
  return fitting.length === 1 ? fitting[0] : null;
}

function misspelt(key: string, path: Path, node: JsonSchema | null): Problem {
  const known = Object.keys(node?.properties ?? {});
  const nearest = nearestWords(key, known)[0] ?? '';
  const properties = node?.properties?.[nearest];
  return {
    path: pathText([...path, key]),
    found: 'a field that is not known here',
    allowed: known.length === 0 ? 'no such field' : `only ${known.join(', ')}`,
    example: nearest === '' ? '' : `"${nearest}": ${exampleText(properties ?? null)}`,
  };
}

function valueAt(input: unknown, path: Path): unknown {
  let value = input;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

/** The part of the schema that speaks of a path, taking the branch of a union that fits the input. */
function nodeAt(schema: JsonSchema, path: Path, input: unknown): JsonSchema | null {
  let node: JsonSchema | undefined = schema;
  let value = input;
  for (const key of path) {
    node = node === undefined ? undefined : branchFor(node, value);
    if (typeof key === 'number') node = node?.items;
    else
      node =
        node?.properties !== undefined && Object.hasOwn(node.properties, key)
          ? node.properties[String(key)]
          : undefined;
    value = valueAt(value, [key]);
  }
  return node === undefined ? null : branchFor(node, value, true);
}

function branchFor(node: JsonSchema, value: unknown, keepUndecided = false): JsonSchema {
  const branches = node.oneOf ?? node.anyOf;
  if (branches === undefined) return node;
  if (Array.isArray(value)) return branches.find((branch) => branch.type === 'array') ?? node;
  if (typeof value !== 'object' || value === null) return node;
  const kind = (value as Record<string, unknown>).kind;
  const byKind = branches.find((branch) => kind !== undefined && branch.properties?.kind?.const === kind);
  return (
    byKind ??
    (keepUndecided && node.oneOf !== undefined ? node : (branches.find((branch) => branch.type === 'object') ?? node))
  );
}

/** What may stand somewhere, in words. */
function allowedText(node: JsonSchema): string {
  const shape = shapeText(node);
  return node.description === undefined ? shape : `${shape}: ${node.description}`;
}

function shapeText(node: JsonSchema): string {
  if (node.const !== undefined) return JSON.stringify(node.const);
  if (node.enum !== undefined) return `one of ${node.enum.map((one) => JSON.stringify(one)).join(', ')}`;
  const branches = node.oneOf ?? node.anyOf;
  if (branches !== undefined) {
    return branches
      .map((branch) =>
        branch.properties?.kind?.const === undefined
          ? shapeText(branch)
          : `kind ${JSON.stringify(branch.properties.kind.const)}`,
      )
      .join(', or ');
  }
  switch (node.type) {
    case 'number':
      return `a number from ${node.minimum} to ${node.maximum}`;
    case 'integer':
      return `a whole number from ${node.minimum} to ${node.maximum}`;
    case 'boolean':
      return 'true or false';
    case 'string':
      return node.pattern === undefined
        ? `text of 1 to ${node.maxLength} letters`
        : `a short name of small letters, digits and hyphens, at most ${node.maxLength}`;
    case 'array':
      return `a list of ${node.minItems ?? 0} to ${node.maxItems} entries`;
    default:
      return `an object with ${Object.keys(node.properties ?? {}).join(', ')}`;
  }
}

function exampleText(node: JsonSchema | null): string {
  if (node === null) return '';
  const example = exampleOf(node);
  return example === undefined ? '' : JSON.stringify(example);
}

/** A value that could stand there: the schema's own example, else one built from what must be there. */
function exampleOf(node: JsonSchema): unknown {
  if (node.examples !== undefined) return node.examples[0];
  if (node.const !== undefined) return node.const;
  if (node.type === 'array' && node.items !== undefined) {
    const entry = exampleOf(node.items);
    return entry === undefined ? undefined : [entry];
  }
  if (node.type !== 'object' || node.properties === undefined) return undefined;
  const { properties } = node;
  const alternatives = (node.allOf ?? []).flatMap((one) => one.oneOf?.[0]?.required ?? []);
  const needed = Object.keys(properties).filter((key) => node.required?.includes(key) || alternatives.includes(key));
  return Object.fromEntries(needed.map((key) => [key, exampleOf(properties[key])]));
}
