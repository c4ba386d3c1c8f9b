import { nameOfRenderer } from './nameOfRenderer.ts';

/**
 * The name of what draws on this machine, asked for beside the page; empty where nothing does.
 *
 * The first to ask for a picture in space waits while the browser starts what draws, some hundred milliseconds without a card; asked here, the page
 * has the time for itself, and what draws is awake when the stage comes.
 */
export function askForRenderer(): Promise<string> {
  return new Promise((resolve) => {
    const worker = new Worker(new URL('./rendererWorker.ts', import.meta.url), { type: 'module' });
    const end = (name: string): void => {
      worker.terminate();
      resolve(name === '' ? nameOfRenderer(document.createElement('canvas')) : name);
    };
    worker.onmessage = ({ data }: MessageEvent<string>) => end(data);
    worker.onerror = () => end('');
  });
}
