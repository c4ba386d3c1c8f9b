import { hypot } from '../../core/math/index.ts';
import type { DrawnLine, DrawnPoint } from './types.ts';

/** Ends of lines that lie this near belong together, mm: drawings are exact to far less, and no track is so short. */
const sameEndMm = 0.1;

/** Lines whose ends meet, as one, whatever way each was drawn; of several that go on from one end the first is taken. */
export function chained(lines: readonly DrawnLine[]): DrawnLine[] {
  const free = new Set(lines.keys());
  const ends = new Map<string, { readonly line: number; readonly point: DrawnPoint }[]>();
  lines.forEach((line, index) => {
    for (const point of [line[0], line[line.length - 1]]) {
      const key = cell(point.xMm, point.yMm);
      const there = ends.get(key);
      if (there) there.push({ line: index, point });
      else ends.set(key, [{ line: index, point }]);
    }
  });
  /** A free line with an end at `at`, turned to start there. */
  const goingOn = (at: DrawnPoint): DrawnLine | null => {
    for (const dx of [-1, 0, 1]) {
      for (const dy of [-1, 0, 1]) {
        for (const { line, point } of ends.get(cell(at.xMm + dx * sameEndMm, at.yMm + dy * sameEndMm)) ?? []) {
          if (!free.has(line) || hypot(point.xMm - at.xMm, point.yMm - at.yMm) > sameEndMm) continue;
          free.delete(line);
          return lines[line][0] === point ? lines[line] : reversed(lines[line]);
        }
      }
    }
    return null;
  };
  const chains: DrawnLine[] = [];
  for (const index of lines.keys()) {
    if (!free.delete(index)) continue;
    let chain = [...lines[index]];
    for (let side = 0; side < 2; side++) {
      for (let next = goingOn(chain[chain.length - 1]); next !== null; next = goingOn(chain[chain.length - 1])) {
        chain.pop();
        for (const point of next) chain.push(point);
      }
      chain = reversed(chain);
    }
    chains.push(chain);
  }
  return chains;
}

const cell = (x: number, y: number): string => `${Math.round(x / sameEndMm)} ${Math.round(y / sameEndMm)}`;

/** A line drawn the other way: its bulges belong to the points at their other ends. */
function reversed(line: DrawnLine): DrawnPoint[] {
  return line
    .map(({ bulge: _, ...point }, i): DrawnPoint => {
      const before = line[i - 1]?.bulge;
      return before === undefined ? point : { ...point, bulge: -before };
    })
    .reverse();
}
