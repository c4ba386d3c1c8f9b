import { askForRenderer } from '../platform/renderer/askForRenderer.ts';
import { createSimWorker } from '../platform/simWorker.ts';

// The solver's own thread comes in beside the program, not after it; so does what draws.
const solver = createSimWorker();
const renderer = askForRenderer();
void import('./main.tsx').then(({ openProgram }) => openProgram(solver, renderer));
