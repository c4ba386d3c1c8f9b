import type { CDPSession, Page } from 'playwright-core';
import { patience } from './screen.ts';

export type Spot = readonly [x: number, y: number];

/** Steps that a finger's way is made in, and what passes between two, ms: quick enough not to be a long press. */
const [steps, pause] = [4, 40];

/** Fingers on the glass, as the browser has them from its touch screen: it alone makes pointers of them, or scrolls with them. */
export class Fingers {
  private readonly down = new Map<number, Spot>();
  private constructor(
    private readonly page: Page,
    private readonly glass: CDPSession,
  ) {}

  static async on(page: Page): Promise<Fingers> {
    return new Fingers(page, await page.context().newCDPSession(page));
  }

  async put(id: number, at: Spot): Promise<void> {
    this.down.set(id, at);
    await this.send('touchStart');
  }

  /** Takes fingers on their way to other places, all at once. */
  async go(ways: Readonly<Record<number, Spot>>): Promise<void> {
    const from = new Map(this.down);
    for (let step = 1; step <= steps; step++) {
      for (const [id, [x, y]] of Object.entries(ways)) {
        const [x0, y0] = from.get(Number(id)) ?? [x, y];
        this.down.set(Number(id), [x0 + ((x - x0) * step) / steps, y0 + ((y - y0) * step) / steps]);
      }
      await this.send('touchMove');
      await this.page.waitForTimeout(pause);
    }
  }

  async lift(id: number): Promise<void> {
    this.down.delete(id);
    await this.send('touchEnd');
  }

  /** One finger from a place by some way and off again. */
  async drag([x, y]: Spot, [dx, dy]: Spot): Promise<void> {
    await this.put(1, [x, y]);
    await this.go({ 1: [x + dx, y + dy] });
    await this.page.waitForTimeout(200);
    await this.lift(1);
  }

  private async send(type: 'touchStart' | 'touchMove' | 'touchEnd'): Promise<void> {
    const touchPoints = [...this.down].map(([id, [x, y]]) => ({ id, x, y }));
    await this.glass.send('Input.dispatchTouchEvent', { type, touchPoints });
  }
}

/** Pictures in a row in which a place must be the same before it is touched: a camera that was changed shows in the next, its handles in the one after. */
const stillFor = 4;

/** Where a finger hits the first of what a selector finds that nothing else lies over, once it stands still there. */
export async function spotOf(page: Page, selector: string): Promise<Spot> {
  const seen = { at: '', times: 0 };
  const memory = await page.evaluateHandle((fresh) => fresh, seen);
  const found = await page.waitForFunction(
    ({ wanted, enough, before }) => {
      for (const one of document.querySelectorAll(wanted)) {
        const { x, y, width, height } = one.getBoundingClientRect();
        const at = [x + width / 2, y + height / 2] as const;
        const hit = document.elementFromPoint(...at);
        if (getComputedStyle(one).visibility !== 'visible' || hit === null || !one.contains(hit)) continue;
        before.times = String(at) === before.at ? before.times + 1 : 1;
        before.at = String(at);
        return before.times >= enough ? at : null;
      }
      return null;
    },
    { wanted: selector, enough: stillFor, before: memory },
    { timeout: patience },
  );
  return (await found.jsonValue()) as Spot;
}
