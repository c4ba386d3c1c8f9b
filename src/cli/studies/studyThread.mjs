import { register } from 'tsx/esm/api';

// A new thread begins without the loader that reads TypeScript: it has to be set up before anything of ours is imported.
register();
await import('./studyWorker.ts');
