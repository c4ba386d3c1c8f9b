import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** What the built app is made from. */
const sources = ['index.html', 'package-lock.json', 'vite.config.ts', 'src', 'public', 'scenes'];

function newest(path: string): number {
  if (!existsSync(path)) return 0;
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), 0);
}

/** Whether the app below `house` must be built: `dist` is missing, or older than something it is made from. */
export function isStale(house: string): boolean {
  const built = join(house, 'dist', 'index.html');
  if (!existsSync(built)) return true;
  const made = statSync(built).mtimeMs;
  return sources.some((source) => newest(join(house, source)) > made);
}

/** Builds the app below `house` into `dist`. Throws when it cannot be built. */
export async function buildApp(house: string): Promise<void> {
  const { build } = await import('vite');
  await build({ root: house, logLevel: 'warn' });
}
