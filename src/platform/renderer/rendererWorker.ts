import { nameOfRenderer } from './nameOfRenderer.ts';

/** Asks on a thread of its own: the first to ask waits until the browser has started what draws. */
let name = '';
try {
  name = nameOfRenderer(new OffscreenCanvas(1, 1));
} catch {
  // No such canvas, or none that draws in space: the page asks for itself.
}
postMessage(name);
