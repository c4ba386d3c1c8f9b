import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseScene } from '../../src/scene/index.ts';
import { bundledFiles, bundledScene, bundledText, riskFiles, riskScene } from './sample.ts';

describe.each(bundledFiles)('%s', (name) => {
  it('is a sound scene', () => {
    const parsed = parseScene(bundledText(name));
    expect(parsed.ok ? [] : parsed.problems).toEqual([]);
  });

  it('says what it shows in one sentence', () => {
    const { shows } = bundledScene(name);
    expect(shows).toMatch(/^[A-Z].*\.$/);
    expect(shows.split('. ')).toHaveLength(1);
  });
});

describe.each(riskFiles)('risks/%s', (name) => {
  it('is a sound scene that says what it shows in one sentence', () => {
    const { shows } = riskScene(name);
    expect(shows).toMatch(/^[A-Z].*\.$/);
    expect(shows.split('. ')).toHaveLength(1);
  });
});

it('the eleven scenes come in the order in which they are shown', () => {
  expect(bundledFiles.map((name) => name.slice(0, 2))).toEqual([
    '01',
    '02',
    '03',
    '04',
    '05',
    '06',
    '07',
    '08',
    '09',
    '10',
    '11',
  ]);
});

it('the example of docs/reference/scene.md is a sound scene', () => {
  const page = readFileSync(new URL('../../docs/reference/scene.md', import.meta.url), 'utf8');
  const example = /```json\n(.*?)```/s.exec(page)?.[1] ?? '';
  const parsed = parseScene(example);
  expect(parsed.ok ? [] : parsed.problems).toEqual([]);
});
