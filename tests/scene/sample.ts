import { readdirSync, readFileSync } from 'node:fs';
import { parseScene, type Scene } from '../../src/scene/index.ts';

/** A small sound scene to be bent by tests: 6 m of track, one curve each way, an engine and two coaches. */
export const sample = {
  gradewright: 1,
  name: 'Sample',
  shows: 'Nothing but itself.',
  scale: { name: 'OO', gaugeMm: 16.5 },
  deck: { thicknessMm: 9, underlayMm: 3, trackMm: 5 },
  tracks: [
    {
      id: 'line',
      name: 'Line',
      start: { xMm: 0, yMm: 0, headingDeg: 0 },
      alignment: [
        { kind: 'straight', id: 'lead', lengthMm: 2000 },
        { kind: 'arc', id: 'first', radiusMm: 1000, turn: 'left', lengthMm: 1000 },
        { kind: 'arc', id: 'second', radiusMm: 1000, turn: 'right', lengthMm: 1000 },
        { kind: 'straight', id: 'tail', lengthMm: 2000 },
      ],
      profile: [
        { atMm: 0, heightMm: 0 },
        { atMm: 2000, heightMm: 0, verticalCurveLengthMm: 400 },
        { at: { endOf: 'track' }, heightMm: 80 },
      ],
      supports: { everyMm: 300, off: [{ support: 3, byMm: 1.5 }] },
      stripJoints: [{ atMm: 1200 }],
    },
  ],
  couplings: [{ id: 'bar', kind: 'hook-and-bar' }],
  stock: [
    {
      id: 'engine',
      name: 'Engine',
      kind: 'locomotive',
      massG: 300,
      lengthMm: 120,
      wheelbaseMm: 60,
      coupling: 'bar',
      drive: { drivenMassG: 300 },
    },
    {
      id: 'coach',
      name: 'Coach',
      kind: 'coach',
      massG: 120,
      overBuffersMm: 258,
      bogies: { centresMm: 186, wheelbaseMm: 34 },
      coupling: 'bar',
      buffers: {},
    },
  ],
  trains: [{ id: 'train', name: 'Train', vehicles: [{ stock: 'engine' }, { stock: 'coach', count: 2 }] }],
  trials: [
    {
      id: 'up',
      name: 'Up',
      track: 'line',
      train: 'train',
      towards: 'end',
      leading: 'first',
      startMm: 900,
      finishMm: 5900,
      timeLimitS: 60,
      orders: [{ atS: 0, setting: 0.5 }],
    },
  ],
} as const;

/** The sample as a checked scene of its own. */
export const sampleScene = (): Scene => sceneOf(sample);

/** A scene that has to be sound for the test to make sense. */
export function sceneOf(source: unknown): Scene {
  const parsed = parseScene(structuredClone(source));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems, null, 2));
  return parsed.scene;
}

/** The sample with one place changed; `undefined` takes the field away. */
export function sampleWith(path: string, value: unknown): unknown {
  const changed = structuredClone(sample) as unknown;
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  let place = changed as Record<string, unknown>;
  for (const key of keys) place = place[key] as Record<string, unknown>;
  if (value === undefined) delete place[last];
  else place[last] = value;
  return changed;
}

const folder = new URL('../../scenes/', import.meta.url);
const riskFolder = new URL('risks/', folder);

const scenesIn = (place: URL): readonly string[] =>
  readdirSync(place)
    .filter((name) => name.endsWith('.json'))
    .sort();

/** File names of the scenes that come with the program. */
export const bundledFiles = scenesIn(folder);

/** File names of the scenes that show one risk each, in `scenes/risks`. */
export const riskFiles = scenesIn(riskFolder);

export const riskScene = (name: string): Scene =>
  sceneOf(JSON.parse(readFileSync(new URL(name, riskFolder).pathname, 'utf8')));

export const bundledPath = (name: string): string => new URL(name, folder).pathname;

export const bundledText = (name: string): string => readFileSync(bundledPath(name), 'utf8');

export const bundledScene = (name: string): Scene => sceneOf(JSON.parse(bundledText(name)));
