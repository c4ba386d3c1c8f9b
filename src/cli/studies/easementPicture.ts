import type { Scene } from '../../scene/index.ts';
import { clothoids, lengthsMm } from './easementStudy.ts';

/** Size of the picture and its field, px. */
const field = { width: 720, height: 430, left: 56, right: 28, top: 34, bottom: 84 } as const;
/** What the axes go up to, mm, and how far buffer heads may stand aside. */
const [mostLong, mostAside, head] = [500, 14, 6];
/** The curve is worked out this often, mm. */
const every = 25;
const inks = {
  ink: '#18222e',
  quiet: '#5c656f',
  rule: '#d8d3c6',
  mark: '#6a28c0',
  tint: '#efe8fa',
  ground: '#fbfaf6',
} as const;

/**
 * The picture of the study: how far buffer heads stand aside by the length of a clothoid, in the S and at the end of a curve, the range in which heads of 6 mm slip past each other, and under each length of the study what it
 * costs: by how much sooner the straight has to end.
 */
export function easementPicture(scene: Scene): string {
  const x = (mm: number): number => field.left + (mm / mostLong) * (field.width - field.left - field.right);
  const y = (mm: number): number =>
    field.height - field.bottom - (mm / mostAside) * (field.height - field.top - field.bottom);
  const px = (value: number): string => value.toFixed(1);
  const text = (at: number, up: number, words: string, more = ''): string =>
    `<text x="${px(at)}" y="${px(up)}"${more === '' ? '' : ` ${more}`}>${words}</text>`;
  const [left, right, foot] = [x(0), x(mostLong), y(0)];
  const lengths = Array.from({ length: 450 / every + 1 }, (_, i) => i * every);
  const told: readonly number[] = [0, ...lengthsMm];
  const curve = (layout: 's-bend' | 'curve-exit', dashes: string): string[] => {
    const rows = clothoids(scene, layout, lengths);
    const points = rows.map((one, i) => `${px(x(lengths[i]))},${px(y(one.buffers * 1e3))}`);
    const dots = rows.flatMap((one, i) =>
      told.includes(lengths[i])
        ? [`<circle cx="${px(x(lengths[i]))}" cy="${px(y(one.buffers * 1e3))}" r="3.2" fill="${inks.ink}"/>`]
        : [],
    );
    return [
      `<polyline points="${points.join(' ')}" fill="none" stroke="${inks.ink}" stroke-width="1.8"${dashes}/>`,
      ...(layout === 's-bend' ? dots : []),
    ];
  };
  const marked = clothoids(scene, 's-bend', told);
  const leftOver = (aside: number): string =>
    aside > head ? `${(aside - head).toFixed(1)} past` : `${(head - aside).toFixed(1)} left`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${field.width} ${field.height}" font-family="sans-serif" font-size="12.5" fill="${inks.ink}">`,
    `<title>Buffer heads aside by length of easement, and what it costs</title><rect width="100%" height="100%" fill="${inks.ground}"/>`,
    `<rect x="${px(left)}" y="${px(y(mostAside))}" width="${px(right - left)}" height="${px(y(head) - y(mostAside))}" fill="${inks.tint}"/>`,
    ...[2, 4, 8, 10, 12].map(
      (mm) =>
        `<line x1="${px(left)}" x2="${px(right)}" y1="${px(y(mm))}" y2="${px(y(mm))}" stroke="${inks.rule}" stroke-width="0.7"/>`,
    ),
    ...[0, 2, 4, 6, 8, 10, 12, 14].map((mm) =>
      text(left - 8, y(mm) + 4, String(mm), `text-anchor="end" fill="${inks.quiet}"`),
    ),
    `<line x1="${px(left)}" x2="${px(right)}" y1="${px(y(head))}" y2="${px(y(head))}" stroke="${inks.mark}" stroke-width="1.4"/>`,
    `<line x1="${px(left)}" x2="${px(right)}" y1="${px(foot)}" y2="${px(foot)}" stroke="${inks.ink}"/>`,
    text(
      right - 6,
      y(head) - 7,
      'heads 6 mm wide slip past each other and lock',
      `text-anchor="end" fill="${inks.mark}" font-weight="600"`,
    ),
    text(right - 6, y(head) + 17, 'heads still meet', `text-anchor="end" fill="${inks.quiet}"`),
    ...curve('s-bend', ''),
    ...curve('curve-exit', ' stroke-dasharray="6 4"'),
    text(x(52), y(11.2), 'in the S of two curves of 600 mm', 'font-weight="600"'),
    text(x(20), y(6.95), 'at the end of one', `fill="${inks.quiet}"`),
    ...marked.flatMap((one, i) => {
      const [at, aside] = [x(told[i]), one.buffers * 1e3];
      const anchor = i === 0 ? 'start' : 'middle';
      return [
        ...(i === 0
          ? []
          : [
              `<line x1="${px(at)}" x2="${px(at)}" y1="${px(y(aside))}" y2="${px(foot)}" stroke="${inks.rule}" stroke-dasharray="2 3"/>`,
            ]),
        text(at, foot + 17, i === 0 ? 'none' : `${told[i]} mm`, `text-anchor="${anchor}" font-weight="600"`),
        text(at, foot + 34, leftOver(aside), `text-anchor="${anchor}"${aside > head ? ` fill="${inks.mark}"` : ''}`),
        text(
          at,
          foot + 51,
          i === 0 ? '' : `${(one.ahead * 1e3).toFixed(0)} sooner`,
          `text-anchor="${anchor}" fill="${inks.quiet}"`,
        ),
      ];
    }),
    text(left, field.top - 14, 'buffer heads aside, mm', `fill="${inks.quiet}"`),
    text(
      (left + right) / 2,
      field.height - 10,
      'length of the clothoid · overlap left, mm · by how much sooner the straight ends, mm',
      `text-anchor="middle" fill="${inks.quiet}"`,
    ),
    '</svg>',
    '',
  ].join('\n');
}
