import { createSimWorker } from '../platform/simWorker.ts';

// The solver's own thread comes in beside the program, not after it.
const solver = createSimWorker();
void import('./main.tsx').then(({ openProgram }) => openProgram(solver));
