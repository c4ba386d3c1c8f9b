import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { serveFolder } from '../../src/cli/serve.ts';
import { chromiumFlags, findChromium } from './chromium.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));
const shots = `${house}tests/browser/shots/`;

export interface OpenOptions {
  /** Folder served; default the built app, `dist`. */
  readonly folder?: string;
  /** What follows the origin, such as `#scene=…`. */
  readonly path?: string;
  readonly width?: number;
  readonly height?: number;
  /** The person asked their system for little motion: nothing plays by itself, and the camera jumps. */
  readonly still?: boolean;
  /** Language of the browser; British when left out. */
  readonly locale?: string;
  /** A finger instead of a mouse. */
  readonly touch?: boolean;
  /** Runs in the page before the page's own scripts. */
  readonly before?: () => void;
}

export interface Opened {
  readonly page: Page;
  readonly browser: Browser;
  readonly url: string;
  /** Console errors and warnings, uncaught exceptions and failed loads, in order. */
  readonly complaints: readonly string[];
  /** Addresses outside the page's own origin that were asked for. They are refused, so no test can depend on them. */
  readonly foreign: readonly string[];
  /** Saves what is seen to tests/browser/shots/<name>.png, for a person to look at. */
  shot(name: string): Promise<void>;
  close(): Promise<void>;
}

/** Serves the built app on a port of its own and opens it in Chromium. Close what it gives, whatever happens. */
export async function openApp(options: OpenOptions = {}): Promise<Opened> {
  const executablePath = findChromium();
  const served = await serveFolder(options.folder ?? `${house}dist`).catch((problem: Error) => {
    throw new Error(`There is no built app to test; run \`npm run build\` first (${problem.message}).`);
  });
  const complaints: string[] = [];
  const foreign: string[] = [];
  let browser: Browser | undefined;
  try {
    browser = await chromium.launch({ executablePath, args: chromiumFlags });
    const viewport = { width: options.width ?? 1280, height: options.height ?? 800 };
    const context = await browser.newContext({
      viewport,
      locale: options.locale ?? 'en-GB',
      acceptDownloads: true,
      serviceWorkers: 'allow',
      reducedMotion: options.still ? 'reduce' : 'no-preference',
      hasTouch: options.touch ?? false,
      isMobile: options.touch ?? false,
    });
    if (options.before) await context.addInitScript(options.before);
    const own = new URL(served.url).origin;
    const isOwn = (address: string) => /^(data|blob|about):/.test(address) || new URL(address).origin === own;
    await context.route(
      (address) => !isOwn(address.href),
      (route) => {
        foreign.push(route.request().url());
        return route.abort();
      },
    );
    const page = await context.newPage();
    page.on('websocket', (socket) => foreign.push(socket.url()));
    page.on('console', (message) => {
      if (!['error', 'warning', 'assert'].includes(message.type())) return;
      complaints.push(`${message.type()}: ${message.text()}`);
    });
    page.on('pageerror', (problem) => complaints.push(`uncaught: ${problem.message}`));
    page.on('crash', () => complaints.push('the page crashed'));
    page.on('response', (response) => {
      if (response.status() >= 400) complaints.push(`${response.status()}: ${response.url()}`);
    });
    await page.goto(new URL(options.path ?? '', served.url).href);
    const opened = browser;
    return {
      page,
      browser: opened,
      url: served.url,
      complaints,
      foreign,
      async shot(name) {
        mkdirSync(shots, { recursive: true });
        await page.screenshot({ path: `${shots}${name}.png` });
      },
      async close() {
        await opened.close();
        await served.close();
      },
    };
  } catch (problem) {
    await browser?.close();
    await served.close();
    throw problem;
  }
}
