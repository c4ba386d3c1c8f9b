import { easeOut } from '../camera/look.ts';

/** Opening and closing, ms. */
const lensTime = 160;

/** How far the lens is open: 0 shut, 1 open, in between while it moves. */
export class LensMotion {
  private from = 0;
  private to: 0 | 1 = 0;
  private start = 0;

  get opening(): boolean {
    return this.to === 1;
  }

  /** Opens or shuts it from `now` (ms) on; `cut` does it at once. Returns whether anything changes. */
  turn(open: boolean, now: number, cut: boolean): boolean {
    const to = open ? 1 : 0;
    if (to === this.to) return false;
    this.from = cut ? to : this.share(now);
    this.to = to;
    this.start = now;
    return true;
  }

  share(now: number): number {
    const time = Math.min(1, Math.max(0, (now - this.start) / lensTime));
    return this.from + (this.to - this.from) * easeOut(time);
  }

  moving(now: number): boolean {
    return this.share(now) !== this.to;
  }
}
