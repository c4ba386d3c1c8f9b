import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { parseLength } from '../core/units/index.ts';
import { type Imported, importedScene, serialiseScene, shapeScales } from '../scene/index.ts';
import { BadInput } from './exitCodes.ts';

/** What `gradewright import` is asked. */
export interface ImportAsked {
  readonly tolerance?: string | undefined;
  readonly scale?: string | undefined;
  readonly eased?: true | undefined;
  readonly out?: string | undefined;
}

/** Larger files are no centrelines, bytes. */
const largestFile = 8_000_000;

/** Makes a scene of a file of centrelines: the scene as text, and what was done, in words. Throws BadInput for a file that holds no line that can be run. */
export function importScene(path: string, asked: ImportAsked): { readonly scene: string; readonly words: string } {
  const scale = scaleOf(asked.scale ?? 'HO');
  const toleranceMm = toleranceOf(asked.tolerance ?? '1mm');
  const text = textOf(path);
  let imported: Imported;
  try {
    imported = importedScene(path, text, { toleranceMm, scale, eased: asked.eased === true });
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(`${path}: ${error.message}`);
    throw error;
  }
  const scene = serialiseScene(imported.scene);
  if (asked.out !== undefined) write(asked.out, scene);
  return { scene, words: wordsOf(imported) };
}

function wordsOf({ scene, from, distanceMm, heightDistanceMm, linesLeft, problems, notes }: Imported): string {
  const kinds = scene.tracks[0].alignment.map(({ kind }) => kind);
  const counted = (['straight', 'arc', 'helix', 'transition'] as const)
    .map(
      (kind) =>
        [
          kinds.filter((one) => one === kind).length,
          { straight: 'straight', arc: 'arc', helix: 'helix', transition: 'easement' }[kind],
        ] as const,
    )
    .filter(([count]) => count > 0)
    .map(([count, word]) => `${count} ${word}${count === 1 ? '' : word === 'helix' ? '' : 's'}`)
    .join(', ');
  const off = `${distanceMm.toFixed(2)} mm off at most`;
  return [
    from.kind === 'drawn'
      ? `Taken as drawn: ${counted}; ${off}.`
      : `Fitted to ${from.places} places: ${counted}; ${off}.`,
    ...(heightDistanceMm === null
      ? []
      : [
          `Heights: ${scene.tracks[0].profile.length} points of the profile; ${heightDistanceMm.toFixed(2)} mm off at most.`,
        ]),
    ...(linesLeft === 0 ? [] : [`The longest line became the track; ${linesLeft} more left out.`]),
    ...notes,
    ...problems.map(({ line, found }) => `Line ${line}: ${found}; passed over.`),
    '',
  ].join('\n');
}

function scaleOf(name: string) {
  const found = shapeScales.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (found) return found;
  throw new BadInput(`--scale is one of ${shapeScales.map((one) => one.name).join(', ')}, not "${name}".`);
}

function toleranceOf(spoken: string): number {
  const reading = parseLength(spoken, { least: 1e-6, most: 1 });
  if (!reading.ok) throw new BadInput(`--tolerance ${reading.message}`);
  return reading.value * 1000;
}

function textOf(path: string): string {
  try {
    if (statSync(path).size > largestFile) throw new BadInput(`${path} is larger than ${largestFile} bytes.`);
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw error instanceof BadInput ? error : new BadInput(`Cannot read ${path}: ${(error as Error).message}`);
  }
}

function write(path: string, text: string): void {
  try {
    // Never over a file that is there.
    writeFileSync(path, text, { flag: 'wx' });
  } catch (error) {
    throw new BadInput(`Cannot write ${path}: ${(error as Error).message}`);
  }
}
