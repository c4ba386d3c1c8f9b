import { commandLine } from './commandLine.ts';
import { exitCodes } from './exitCodes.ts';
import { createStudyWorkers } from './studies/studyWorkers.ts';

// A reader that has seen enough (`| head`) closes the pipe: that is no error of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

// Setting the code instead of leaving at once lets a pipe take all of the output.
try {
  process.exitCode = await commandLine(process.argv.slice(2), {
    out: process.stdout,
    err: process.stderr,
    workers: createStudyWorkers,
    interrupts: process,
  });
} catch (error) {
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  process.exitCode = exitCodes.fault;
}
