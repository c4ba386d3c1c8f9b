import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { referenceFiles } from '../../../src/cli/reference/referenceFiles.ts';
import { type JsonSchema, sceneJsonSchema } from '../../../src/scene/index.ts';
import { bundledFiles, bundledText, sample, sampleWith } from '../sample.ts';

describe('what of docs/reference is made from the code', () => {
  it.each(Object.entries(referenceFiles()))('%s is up to date (npm run schema)', (name, text) => {
    expect(readFileSync(new URL(`../../../docs/reference/${name}`, import.meta.url), 'utf8')).toBe(text);
  });
});

describe('the JSON Schema of scenes, read by a checker that knows only it', () => {
  const checker = z.fromJSONSchema(sceneJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);

  it.each(bundledFiles)('takes %s', (name) => {
    expect(checker.safeParse(JSON.parse(bundledText(name))).success).toBe(true);
  });

  it('takes the sample and refuses what is wrong with it', () => {
    expect(checker.safeParse(sample).success).toBe(true);
    expect(checker.safeParse(sampleWith('tracks.0.alignment.1.radiusMm', -1)).success).toBe(false);
    expect(checker.safeParse(sampleWith('tracks.0.alignment.1.turn', 'up')).success).toBe(false);
    expect(checker.safeParse(sampleWith('names', 'x')).success).toBe(false);
  });

  it('says which fields exclude each other', () => {
    const element = sceneJsonSchema().properties?.tracks.items?.properties?.alignment.items;
    const arc = element?.oneOf?.find((one) => one.properties?.kind.const === 'arc');
    expect(arc?.allOf?.[0].oneOf?.map((one) => one.required)).toEqual([['angleDeg'], ['lengthMm']]);
    expect(checker.safeParse(sampleWith('tracks.0.alignment.1.angleDeg', 30)).success).toBe(false);
    expect(checker.safeParse(sampleWith('tracks.0.alignment.1.lengthMm', undefined)).success).toBe(false);
  });

  it('describes and exemplifies every field that a person writes', () => {
    const bare: string[] = [];
    const walk = (node: JsonSchema, path: string): void => {
      for (const [key, inner] of Object.entries(node.properties ?? {})) {
        const leaf = inner.type !== 'object' && inner.type !== 'array' && inner.const === undefined;
        if (leaf && (inner.description === undefined || inner.examples === undefined)) bare.push(`${path}.${key}`);
        walk(inner, `${path}.${key}`);
      }
      for (const inner of [node.items, ...(node.oneOf ?? []), ...(node.anyOf ?? [])]) if (inner) walk(inner, path);
    };
    walk(sceneJsonSchema(), '');
    expect(bare).toEqual([]);
  });
});
