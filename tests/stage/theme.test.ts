import { afterEach, describe, expect, it } from 'vitest';
import { contrastTheme, forcedTheme, plainTheme, setTheme, themed } from '../../src/stage/theme.ts';

afterEach(() => setTheme(plainTheme));

/** `#rrggbb` as it reaches the screen. */
const seen = (colour: ReturnType<typeof themed>): string =>
  `#${[colour.r, colour.g, colour.b]
    .map((part) =>
      Math.round(part * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;

/** Relative luminance and contrast of WCAG 2, https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio. */
const luminance = (hex: string): number => {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
};

describe('the theme of the stage', () => {
  it('repaints the colours that were handed out before, and gives one object for one colour', () => {
    const ink = themed('#8B7A58', 'ink');
    expect(themed('#8B7A58', 'ink')).toBe(ink);
    expect(seen(ink)).toBe('#8b7a58');
    setTheme(contrastTheme);
    expect(seen(ink)).toBe('#000000');
    setTheme(plainTheme);
    expect(seen(ink)).toBe('#8b7a58');
  });

  it('sets every line of the way and the mark off its ground by at least 7 to 1 where more contrast is asked for', () => {
    for (const line of ['#8B7A58', '#2F3946', '#6A727C', '#D2BF98', '#6A28C0', '#C9C1AC']) {
      for (const ground of ['#F1E8D4', '#F4F1E8', '#E6E0D1', '#FBFAF6']) {
        expect(contrast(contrastTheme(line, 'ink'), contrastTheme(ground, 'face'))).toBeGreaterThan(7);
      }
    }
  });

  it('uses nothing but the colours a person has forced, and what lies between them', () => {
    const theme = forcedTheme({ ground: '#000000', ink: '#ffffff', mark: '#ffff00' });
    expect(theme('#8B7A58', 'ink')).toBe('#ffffff');
    expect(theme('#6A28C0', 'ink')).toBe('#ffff00');
    expect(theme('#F1E8D4', 'face')).toBe('#000000');
    expect(theme('#2C3948', 'face')).toMatch(/^#(..)\1\1$/);
  });
});
