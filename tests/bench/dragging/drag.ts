import type { CDPSession } from 'playwright-core';
import { openSolved } from '../../browser/screen.ts';
import { since, watchPage } from './watch.ts';

/** Processor time of the page's own thread, ms. */
export interface Cost {
  readonly task: number;
  readonly script: number;
  readonly layout: number;
}

/** What one move cost; how long it took until the words of the verdict had changed, and were drawn, ms; null where they stayed the same. */
export interface MoveCost {
  readonly cost: Cost;
  readonly commits: number;
  readonly told: number | null;
  readonly drawn: number | null;
}

export interface DragCost {
  readonly moves: readonly MoveCost[];
  /** What the profiler of the browser gives, when it was asked for. */
  readonly profile: unknown;
}

const MOVES = 30;
/** Longer than an answer takes, shorter than an answer and the rest after which a hand is looked at thoroughly, ms. */
const PAUSE = 230;
const grip = '[data-handle="point-1"] .gwb-catch';

async function costUpToNow(cdp: CDPSession): Promise<Cost> {
  const { metrics } = await cdp.send('Performance.getMetrics');
  const of = (wanted: string) => 1000 * (metrics.find(({ name }) => name === wanted)?.value ?? 0);
  return {
    task: of('TaskDuration'),
    script: of('ScriptDuration'),
    layout: of('LayoutDuration') + of('RecalcStyleDuration'),
  };
}

/** Opens a built app as it opens for everybody, and drags a grade point up and down, a pixel a move. Then Escape. */
export async function dragOnce(folder: string, profiled: boolean): Promise<DragCost> {
  const opened = await openSolved({ folder, still: true, before: watchPage });
  try {
    const { page } = opened;
    await page.keyboard.press('1');
    await page.waitForSelector(grip, { state: 'attached' });
    await page.waitForTimeout(2000);
    const { x, y } = await page.evaluate((wanted) => {
      const box = document.querySelector(wanted)!.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    }, grip);
    const cdp = await page.context().newCDPSession(page);
    await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
    await page.mouse.move(x, y);
    await page.mouse.down();
    // The first moves find code that has not been compiled yet.
    for (const dy of [-5, -6, -7]) {
      await page.mouse.move(x, y + dy);
      await page.waitForTimeout(PAUSE);
    }
    if (profiled) {
      await cdp.send('Profiler.enable');
      await cdp.send('Profiler.setSamplingInterval', { interval: 200 });
      await cdp.send('Profiler.start');
    }
    const moves: MoveCost[] = [];
    for (let k = 0; k < MOVES; k++) {
      await since(page);
      const before = await costUpToNow(cdp);
      await page.mouse.move(x, y - 8 - (k % 15));
      await page.waitForTimeout(PAUSE);
      const after = await costUpToNow(cdp);
      const { moved, told, drawn, commits } = await since(page);
      moves.push({
        cost: {
          task: after.task - before.task,
          script: after.script - before.script,
          layout: after.layout - before.layout,
        },
        commits,
        told: moved !== null && told !== null ? told - moved : null,
        drawn: moved !== null && drawn !== null ? drawn - moved : null,
      });
    }
    const profile = profiled ? (await cdp.send('Profiler.stop')).profile : null;
    await page.keyboard.press('Escape');
    await page.mouse.up();
    return { moves, profile };
  } finally {
    await opened.close();
  }
}
