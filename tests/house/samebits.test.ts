import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const house = fileURLToPath(new URL('../../', import.meta.url));

/** Functions whose last bits the language leaves to the engine, and the operator that may be one of them. */
const unfixed =
  /Math\.(a?(sin|cos|tan)h?|atan2|exp|expm1|log(1p|2|10)?|pow|cbrt|hypot|f?sumPrecise)\b|(?<![/*])\*\*(?![*/])/;

describe('what a run is made of', () => {
  it('uses only arithmetic that every engine does alike, so that browser and command line agree to the bit', () => {
    const found: string[] = [];
    let read = 0;
    for (const room of ['core', 'scene', 'sim']) {
      for (const file of readdirSync(`${house}src/${room}`, { recursive: true, encoding: 'utf8' })) {
        if (!file.endsWith('.ts')) continue;
        read++;
        readFileSync(`${house}src/${room}/${file}`, 'utf8')
          .split('\n')
          .forEach((line, i) => {
            if (/^\s*(\*|\/\/|\/\*)/.test(line)) return;
            if (unfixed.test(line)) found.push(`src/${room}/${file}:${i + 1} ${line.trim()}`);
          });
      }
    }
    expect(read).toBeGreaterThan(60);
    expect(found).toEqual([]);
  });
});
