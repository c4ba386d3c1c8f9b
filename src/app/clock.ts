/** Ticks with the seconds since the frame before, once a frame, for as long as the page lives. */
export function startClock(tick: (seconds: number) => void): void {
  let before = performance.now();
  const frame = (now: number) => {
    tick((now - before) / 1000);
    before = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}
