/**
 * Colour in OKLab, so that equal steps along a scale look equal. Matrices: B. Ottosson, "A perceptual color space for
 * image processing" (2020), the same as CSS Color 4 paragraph 9.2 uses; sRGB transfer function: IEC 61966-2-1.
 */

/** Red, green, blue, each 0..255. */
export type Rgb = readonly [number, number, number];
/** Lightness 0..1, green-red, blue-yellow. */
export type Oklab = readonly [number, number, number];

/** Reads `#rrggbb`; throws on anything else. */
export function parseHex(hex: string): Rgb {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex);
  if (!match) throw new Error(`Not a #rrggbb colour: ${hex}`);
  return [Number.parseInt(match[1], 16), Number.parseInt(match[2], 16), Number.parseInt(match[3], 16)];
}

export function formatHex([r, g, b]: Rgb): string {
  return `#${[r, g, b].map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`;
}

function toLinear(part: number): number {
  const c = part / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

function toGamma(light: number): number {
  const c = light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.min(255, Math.max(0, c * 255));
}

export function toOklab(rgb: Rgb): Oklab {
  const r = toLinear(rgb[0]);
  const g = toLinear(rgb[1]);
  const b = toLinear(rgb[2]);
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

/** Parts are clamped to 0..255 but not rounded. */
export function fromOklab([lightness, a, b]: Oklab): Rgb {
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    toGamma(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    toGamma(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    toGamma(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ];
}

/** A colour `share` (0..1) of the way from one colour to another. */
export function mixOklab(from: Oklab, to: Oklab, share: number): Oklab {
  return [
    from[0] + (to[0] - from[0]) * share,
    from[1] + (to[1] - from[1]) * share,
    from[2] + (to[2] - from[2]) * share,
  ];
}

/** `count` colours evenly along a chain of evenly spaced stops (`#rrggbb`), first and last stop included. */
export function rampOf(stops: readonly string[], count: number): string[] {
  const labs = stops.map((stop) => toOklab(parseHex(stop)));
  return Array.from({ length: count }, (_, index) => {
    const at = (index / (count - 1)) * (labs.length - 1);
    const below = Math.min(labs.length - 2, Math.floor(at));
    return formatHex(fromOklab(mixOklab(labs[below], labs[below + 1], at - below)));
  });
}
