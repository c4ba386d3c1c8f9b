import { outlinePath } from '../../core/build/index.ts';
import type { BuildPlan } from '../../sim/build/index.ts';
import { betweenSheets, letterHeight, namedOutlines, scaleCheck } from './namedOutlines.ts';

/** All sheets of a plan as one SVG drawing at full size, in mm: outlines to saw along, names to engrave, and a square of 100 mm under them to check the scale by. */
export function sheetsSvg(plan: BuildPlan): string {
  const { sheet, layout } = plan;
  const mm = (metres: number): string => String(Math.round(metres * 1e7) / 1e4);
  const down = (number: number): number => number * (sheet.width + betweenSheets);
  const height = down(layout.sheets) + scaleCheck;
  const named = namedOutlines(plan);
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(sheet.length)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(sheet.length)} ${mm(height)}" fill="none" stroke="#000000" stroke-width="0.2" font-family="sans-serif" font-size="${mm(letterHeight)}" text-anchor="middle">`,
    ...Array.from({ length: layout.sheets }, (_, number) => [
      `<g id="sheet-${number + 1}" transform="translate(0 ${mm(down(number))})">`,
      `<rect class="sheet" width="${mm(sheet.length)}" height="${mm(sheet.width)}" stroke-dasharray="4 4"/>`,
      ...named
        .filter((one) => one.sheet === number)
        .flatMap(({ outline, middle: [x, y], name }) => [
          `<path id="${name}" d="${outlinePath(outline, 1e3)}"/>`,
          `<text x="${mm(x)}" y="${mm(y + letterHeight / 3)}" fill="#000000" stroke="none">${name}</text>`,
        ]),
      '</g>',
    ]).flat(),
    `<g transform="translate(0 ${mm(down(layout.sheets))})">`,
    `<rect id="scale-check" width="${mm(scaleCheck)}" height="${mm(scaleCheck)}"/>`,
    `<text x="${mm(scaleCheck / 2)}" y="${mm(scaleCheck / 2)}" fill="#000000" stroke="none">${mm(scaleCheck)} mm</text>`,
    '</g>',
    '</svg>',
  ];
  return `${lines.join('\n')}\n`;
}
