import { accessSync, constants } from 'node:fs';

/** Where a Chromium is looked for, first the one named in the environment. */
const places = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** Software drawing, so that a machine without a graphics card draws the same, and no traffic of the browser's own. */
export const chromiumFlags = [
  '--no-sandbox',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-background-networking',
  '--disable-quic',
  '--no-first-run',
  '--disable-component-update',
  '--disable-sync',
];

const runs = (path: string) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/** The browser to test in. Throws with what to install: a browser test that is skipped would pass for nothing. */
export function findChromium(environment: NodeJS.ProcessEnv = process.env, looked: readonly string[] = places): string {
  const named = environment.CHROMIUM;
  if (named) {
    if (runs(named)) return named;
    throw new Error(`CHROMIUM names ${named}, which is not there or cannot be run.`);
  }
  const found = looked.find(runs);
  if (found) return found;
  throw new Error(
    [
      'The browser tests need Chromium, and none was found.',
      'On Debian or Ubuntu: apt-get install -y chromium fonts-liberation',
      'Elsewhere: install Chromium or Chrome and set CHROMIUM to its path.',
    ].join('\n'),
  );
}
