import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildApp, isStale } from './appBuild.ts';
import { BadInput } from './exitCodes.ts';
import { readScene } from './readScene.ts';
import { serveFolder } from './serve.ts';
import { runTrials } from './trial/trial.ts';

const house = fileURLToPath(new URL('../../', import.meta.url));

/** Asked for when the environment names no port. */
const usualPort = 4173;

function portOf(text: string | undefined): number {
  if (text === undefined || text === '') return usualPort;
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new BadInput(
    `PORT is "${text}"; a port is a whole number from 0 to 65535, for example PORT=8080 (0: any free one).`,
  );
}

/** What the trials of the first scene come to, one line each, found by the solver that the app and the commands use. */
async function firstVerdict(): Promise<string> {
  const [first] = readdirSync(join(house, 'scenes'))
    .filter((name) => name.endsWith('.json'))
    .sort();
  if (first === undefined) throw new BadInput('There is no scene in scenes/.');
  const { report } = await runTrials(readScene(join(house, 'scenes', first)), {});
  const lines = report.trials.map(
    ({ verdict, name, findings }) => `  ${verdict.padEnd(6)}  ${name}${findings[0] ? `: ${findings[0].headline}` : ''}`,
  );
  return [
    `${report.scene}: ${report.verdict}`,
    ...lines,
    `All of it: npm run gradewright -- trial scenes/${first}`,
    '',
  ].join('\n');
}

/** `npm start`: builds if needed, serves on this machine only, says where, and what the first scene comes to. */
async function start(): Promise<void> {
  const port = portOf(process.env.PORT);
  if (isStale(house)) {
    process.stdout.write('Building the app …\n');
    await buildApp(house);
  }
  const served = await serveFolder(join(house, 'dist'), { port });
  process.stdout.write(`\nGradewright is at ${served.url}\n\n`);
  process.stdout.write(await firstVerdict());
  if (process.env.GRADEWRIGHT_ONCE === '1') return served.close();
  process.stdout.write('\nCtrl+C ends it.\n');
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void served.close());
}

start().catch((problem: unknown) => {
  const words =
    problem instanceof Error ? (problem instanceof BadInput ? '' : problem.stack) || problem.message : String(problem);
  process.stderr.write(`${words}\n`);
  process.exit(1);
});
