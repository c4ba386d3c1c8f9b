import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { offlinePlugin } from './src/platform/offline/offlinePlugin.ts';

/** A limit that only a test which hangs can reach: machines are slow and shared, and no test is about its own speed. */
const hanging = 120_000;

export default defineConfig({
  plugins: [react(), offlinePlugin()],
  base: './',
  worker: { format: 'es' },
  // Bundled ahead it would look for its WebAssembly file where there is none.
  optimizeDeps: { exclude: ['highs'] },
  build: {
    target: 'es2022',
    chunkSizeWarningLimit: 1200,
    // The drawing library changes rarely and is most of the weight: apart from the app it stays in a browser's cache.
    rolldownOptions: {
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
