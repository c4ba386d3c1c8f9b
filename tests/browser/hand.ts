import type { Locator, Page } from 'playwright-core';
import { patience } from './screen.ts';

/**
 * Seconds of the keystroke-level model for a practised person (Card, Moran and Newell, "The keystroke-level model for user performance time with interactive systems",
 * Communications of the ACM 23, 1980): a key or button by an average typist, pointing with a mouse, a hand moved between mouse and keys, and getting ready for a deed.
 */
const model = { key: 0.28, point: 1.1, home: 0.4, ready: 1.35 } as const;

/** A notch of a wheel, px. */
const notch = 120;

/**
 * The hands of a person at the page: nothing but moves, presses and the wheel of a mouse, and keys. Counts what the model counts; the answers of the page
 * are waited for and not counted.
 */
export class Hand {
  deeds = 0;
  keys = 0;
  points = 0;
  homes = 0;
  /** Longest the page took to show what a deed came to, ms: told, never asserted. */
  slowest = 0;
  private on: 'mouse' | 'keys' = 'mouse';
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** What the model makes of all that was done, s. */
  get seconds(): number {
    return this.deeds * model.ready + this.keys * model.key + this.points * model.point + this.homes * model.home;
  }

  toString(): string {
    const { deeds, keys, points, homes, seconds, slowest } = this;
    return `${deeds} deeds, ${keys} keys and presses, ${points} points, ${homes} hand changes: ${seconds.toFixed(0)} s by the model; slowest answer ${(slowest / 1000).toFixed(1)} s`;
  }

  /** Presses what is seen there, by mouse; scrolls to it first where it is not. */
  async press(target: Locator): Promise<void> {
    this.deeds++;
    await this.click(target);
  }

  /** One key or chord as a deed of its own. */
  async key(chord: string): Promise<void> {
    this.deeds++;
    this.take('keys');
    this.keys += chord.split('+').length;
    await this.page.keyboard.press(chord);
  }

  /** Goes to a field by mouse, replaces what is in it, and takes it with Enter. */
  async fill(field: Locator, text: string): Promise<void> {
    this.deeds++;
    await this.click(field);
    await this.page.waitForFunction((one) => document.activeElement === one, await field.elementHandle(), {
      timeout: patience,
    });
    await this.chord('Control+a');
    await this.type(text);
    await this.chord('Enter');
  }

  /** Goes on from field to field with Tab, each selected whole as it is come to; an empty text leaves one as it is. */
  async tab(...texts: readonly string[]): Promise<void> {
    for (const text of texts) {
      await this.chord('Tab');
      if (text === '') continue;
      this.deeds++;
      await this.type(text);
    }
  }

  /** Opens a list by mouse, types the beginning of an entry and takes it with Enter. */
  async pick(list: Locator, words: string): Promise<void> {
    this.deeds++;
    await this.click(list);
    await this.type(words);
    await this.chord('Enter');
  }

  /** Waits until the page shows something, and keeps how long that took. */
  async sees(what: string, until: () => Promise<unknown>): Promise<void> {
    const began = Date.now();
    try {
      await until();
    } catch (problem) {
      throw new Error(`Never saw ${what}.`, { cause: problem });
    }
    this.slowest = Math.max(this.slowest, Date.now() - began);
  }

  private async click(target: Locator): Promise<void> {
    const [x, y] = await this.reach(target);
    this.take('mouse');
    this.points++;
    this.keys++;
    await this.page.mouse.move(x, y);
    await this.page.mouse.down();
    await this.page.mouse.up();
  }

  private async chord(chord: string): Promise<void> {
    this.take('keys');
    this.keys += chord.split('+').length;
    await this.page.keyboard.press(chord);
  }

  private async type(text: string): Promise<void> {
    this.take('keys');
    this.keys += text.length;
    await this.page.keyboard.type(text);
  }

  private take(device: 'mouse' | 'keys'): void {
    if (this.on !== device) this.homes++;
    this.on = device;
  }

  /** Where to press it, px, once it stands still there; turns the wheel over what scrolls around it until it is in view. */
  private async reach(target: Locator): Promise<readonly [x: number, y: number]> {
    await target.first().waitFor({ state: 'attached', timeout: patience });
    let before = Number.NaN;
    let looked = false;
    for (let turn = 0; turn < 80; turn++) {
      const seen = await target.first().evaluate((one) => {
        const box = one.getBoundingClientRect();
        const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
        let around: Element | null = one.parentElement;
        while (around !== null && !/auto|scroll/.test(getComputedStyle(around).overflowY))
          around = around.parentElement;
        const frame = (around ?? document.documentElement).getBoundingClientRect();
        const [top, bottom] = [Math.max(0, frame.top), Math.min(innerHeight, frame.bottom)];
        const hit = document.elementFromPoint(x, y);
        const free =
          hit !== null &&
          (one.contains(hit) || hit.contains(one) || (one instanceof HTMLLabelElement && one.control === hit));
        return { x, y, middle: [frame.x + frame.width / 2, (top + bottom) / 2], away: y - (top + bottom) / 2, free };
      });
      // What still moves is not pressed: a wheel runs out, a list closes above it.
      const still = Math.abs(seen.y - before) < 0.5;
      before = seen.y;
      if (!still) {
        await this.page.waitForTimeout(50);
        continue;
      }
      if (seen.free) return [seen.x, seen.y];
      // One look for where it is, however many notches it takes.
      if (!looked) {
        looked = true;
        this.take('mouse');
        this.points++;
      }
      this.keys++;
      await this.page.mouse.move(seen.middle[0], seen.middle[1]);
      const notches = Math.sign(seen.away) * Math.max(1, Math.min(4, Math.round(Math.abs(seen.away) / notch)));
      await this.page.mouse.wheel(0, notches * notch);
      await this.page.waitForTimeout(100);
    }
    throw new Error(`${target} cannot be brought into view.`);
  }
}
