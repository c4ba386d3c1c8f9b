import react from '@vitejs/plugin-react';
import type { Rolldown } from 'vite';
import { defineConfig } from 'vitest/config';
import { offlinePlugin } from './src/platform/offline/offlinePlugin.ts';

/** A limit that only a test which hangs can reach: machines are slow and shared, and no test is about its own speed. */
const hanging = 120_000;

/** The solver of linear problems asks for a module of Node where it runs in Node: in a browser it never does, so that is not worth a word. */
const rolldownLog = (level: Rolldown.LogLevel, log: Rolldown.RolldownLog, tell: Rolldown.LogOrStringHandler) => {
  const isKnown = /Module "node:module" has been externalized.*\/highs\.mjs"/.test(log.message ?? '');
  if (!isKnown) tell(level, log);
};

export default defineConfig({
  plugins: [react(), offlinePlugin()],
  base: './',
  worker: { format: 'es', rolldownOptions: { onLog: rolldownLog } },
  // Bundled ahead it would look for its WebAssembly file where there is none.
  optimizeDeps: { exclude: ['highs'] },
  build: {
    target: 'es2022',
    chunkSizeWarningLimit: 1200,
    // The drawing library changes rarely and is most of the weight: apart from the app it stays in a browser's cache.
    rolldownOptions: {
      onLog: rolldownLog,
      output: { codeSplitting: { groups: [{ name: 'drawing', test: /node_modules[\\/](three|@react-three)[\\/]/ }] } },
    },
  },
  resolve: { dedupe: ['three'] },
  test: {
    testTimeout: hanging,
    hookTimeout: hanging,
    setupFiles: ['tests/seed.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/external/**'],
        },
      },
      { extends: true, test: { name: 'external', include: ['tests/external/**/*.test.ts'] } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 2 * hanging,
          hookTimeout: 2 * hanging,
          fileParallelism: false,
        },
      },
    ],
  },
});
