import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** Writes `serviceWorker.js` beside the page of a build, with the list of all files of that build and a version made from them. */
export function offlinePlugin(): Plugin {
  let root = '';
  let publicDir = '';
  return {
    name: 'gradewright-offline',
    apply: 'build',
    configResolved(config) {
      root = config.root;
      publicDir = config.publicDir;
    },
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const still = readdirSync(publicDir, { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile())
          .map((entry) => join(entry.parentPath, entry.name));
        const built = Object.values(bundle).filter(({ fileName }) => fileName !== 'index.html');
        const source = readFileSync(join(root, 'src/platform/offline/serviceWorker.js'), 'utf8');
        const hash = createHash('sha256').update(source);
        for (const file of Object.values(bundle)) hash.update(file.type === 'chunk' ? file.code : file.source);
        for (const path of still) hash.update(readFileSync(path));
        const files = [
          './',
          ...built.map(({ fileName }) => fileName),
          ...still.map((path) => path.slice(publicDir.length + 1)),
        ];
        const version = hash.digest('hex').slice(0, 16);
        this.emitFile({
          type: 'asset',
          fileName: 'serviceWorker.js',
          source: `const version = ${JSON.stringify(version)};\nconst files = ${JSON.stringify(files)};\n\n${source}`,
        });
      },
    },
  };
}
