/**
 * Measures what a hand that drags a grade point costs the page, in Chromium without a graphics card, in the built app: processor time of the page's own
 * thread for each move, React commits, and how long from the move until the words of the verdict have changed. Then how long after opening the
 * first verdict stands there and the first train moves. Prints and asserts nothing. `npm run bench:dragging -- [--profile=file] [--rounds=n] [--opens=n] [folder …]`;
 * several folders with built apps are measured in turns, round by round, so that what else the machine does meets all alike.
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { openApp } from '../../browser/harness.ts';
import { untilSolved } from '../../browser/screen.ts';
import { type Cost, type DragCost, dragOnce } from './drag.ts';
import { firstSeen, watchPage } from './watch.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    profile: { type: 'string' },
    rounds: { type: 'string', default: '5' },
    opens: { type: 'string', default: '5' },
  },
});
const folders = positionals.length > 0 ? positionals : ['dist'];

const sorted = (all: readonly number[]): readonly number[] => [...all].sort((a, b) => a - b);
const said = (all: readonly number[], unit: string): string => {
  if (all.length === 0) return 'none';
  const row = sorted(all);
  return `least ${row[0]!.toFixed(1)}, median ${row[row.length >> 1]!.toFixed(1)}, most ${row.at(-1)!.toFixed(1)} ${unit}`;
};

const drags = new Map<string, DragCost[]>(folders.map((folder) => [folder, []]));
for (let round = 0; round < Number(values.rounds); round++) {
  for (const folder of folders) {
    const cost = await dragOnce(folder, values.profile !== undefined);
    drags.get(folder)!.push(cost);
    if (cost.profile) writeFileSync(values.profile!, JSON.stringify(cost.profile));
  }
}
for (const folder of folders) {
  const all = drags.get(folder)!;
  const moves = all.flatMap(({ moves }) => moves);
  const median = (of: keyof Cost) =>
    all.map((one) => sorted(one.moves.map((move) => move.cost[of]))[one.moves.length >> 1]!);
  const told = moves.flatMap(({ told }) => (told === null ? [] : [told]));
  console.log(`${folder}: ${all.length} drags, ${moves.length} moves`);
  console.log('  processor time of the page for one move, median of each drag');
  console.log(`    all:              ${said(median('task'), 'ms')}`);
  console.log(`    scripts:          ${said(median('script'), 'ms')}`);
  console.log(`    style and layout: ${said(median('layout'), 'ms')}`);
  console.log(
    `  React commits a move: ${said(
      moves.map(({ commits }) => commits),
      '',
    )}`,
  );
  console.log(`  from a move to other words of the verdict (${told.length} moves): ${said(told, 'ms')}`);
  console.log(
    `  and until they are drawn: ${said(
      moves.flatMap(({ drawn }) => drawn ?? []),
      'ms',
    )}`,
  );
}

for (const folder of folders) {
  const verdict: number[] = [];
  const moves: number[] = [];
  for (let k = 0; k < Number(values.opens); k++) {
    const opened = await openApp({ folder, before: watchPage });
    await untilSolved(opened.page);
    await opened.page.waitForFunction(() => window.__watch!.first.moves !== null);
    const first = await firstSeen(opened.page);
    verdict.push(first.verdict!);
    moves.push(first.moves!);
    await opened.close();
  }
  console.log(`${folder}, ms after opening: verdict ${said(verdict, '')}; a train moves ${said(moves, '')}`);
}
