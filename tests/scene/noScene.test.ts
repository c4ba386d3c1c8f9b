import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isNoScene } from '../../src/scene/index.ts';

const folder = new URL('../../scenes/', import.meta.url);

describe('a file that is no scene', () => {
  it.each([
    ['a letter', 'Wagons to mend: 4, 7'],
    ['a picture', '\uFFFDPNG\r\n\u001A\n\0\0\0'],
    ['nothing', ''],
    ['a list', '[{ "name": "siding" }]'],
    ['settings of another program', '{ "name": "app", "version": 2, "dependencies": { "tracks": "1" } }'],
    ['the same, cut off', '{ "name": "app", "version": 2, "depend'],
  ])('is known by what it lacks: %s', (_, text) => {
    expect(isNoScene(text)).toBe(true);
  });

  it.each([
    ['newer', '{ "gradewright": 7, "weather": {} }'],
    ['half written', '{ "gradewright": 1, "name": "Wren'],
    ['without its version', '{ "tracks": [] }'],
    ['with a mark before it', '\uFEFF{ "trials": [] }'],
  ])('is not one that is meant as a scene: %s', (_, text) => {
    expect(isNoScene(text)).toBe(false);
  });

  it('is none of those that come with the program', () => {
    for (const name of readdirSync(folder).filter((one) => one.endsWith('.json'))) {
      expect(isNoScene(readFileSync(new URL(name, folder), 'utf8'))).toBe(false);
    }
  });
});
