import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundledScene } from '../scene/sample.ts';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { openSolved, read, type Screen, until, untilSolved } from './screen.ts';

let opened: Opened;
let first: Screen;

/** A scene to spoil; the parts that are spoiled are typed loosely, since they are to be wrong. */
const spoilt = (change: (scene: Record<string, unknown> & { trials: { train: string }[] }) => void): string => {
  const scene = structuredClone(bundledScene('07-thistledown-bank.json')) as never;
  change(scene);
  return JSON.stringify(scene);
};

/** Without the dialogs of one browser the page uses the file fields that every browser has. */
function withoutFileDialogs(): void {
  for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) Reflect.deleteProperty(window, name);
}

beforeAll(async () => {
  opened = await openSolved({ still: true, before: withoutFileDialogs });
  first = await read(opened.page);
});

afterAll(() => opened?.close());

/** Lets a file go over the window. */
async function drop(name: string, text: string): Promise<void> {
  const { page } = opened;
  const carried = await page.evaluateHandle(
    ([called, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content], called, { type: 'application/json' }));
      return transfer;
    },
    [name, text] as const,
  );
  await page.dispatchEvent('body', 'dragenter', { dataTransfer: carried });
  await page.getByText('Let go to open this scene file').waitFor();
  await page.dispatchEvent('body', 'drop', { dataTransfer: carried });
}

/** Chooses a file in the dialog that the Open button brings. */
async function choose(name: string, text: string): Promise<void> {
  const { page } = opened;
  const [asked] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('banner').getByRole('button', { name: 'Open' }).click(),
  ]);
  await asked.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

interface Told {
  readonly title: string;
  readonly text: string;
  /** Every place: its path, and what the dialog calls found, allowed and example. */
  readonly places: readonly Readonly<Record<string, string>>[];
}

/** Reads the dialog that explains, and closes it with a key. */
async function explained(): Promise<Told> {
  const { page } = opened;
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  const told = await dialog.evaluate((element): Told => {
    const places = [...element.querySelectorAll('ol > li')].map((place) => {
      const terms = [...place.querySelectorAll('dt')].map((term) => [
        term.textContent,
        term.nextElementSibling?.textContent,
      ]);
      return { path: place.querySelector('code')?.textContent, ...Object.fromEntries(terms) };
    });
    return { title: element.querySelector('h2')?.textContent ?? '', text: element.textContent, places };
  });
  return told;
}

/** Closes the dialog and finds everything as it was. */
async function closeOnLastGood(): Promise<void> {
  const { page } = opened;
  expect(await page.getByRole('dialog').textContent()).toContain('“Wren Gill Spiral” stays open as it was.');
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  expect(await until(page, { problem: null })).toEqual(first);
}

describe('a scene file', () => {
  it('with fields that are wrong is explained, place by place', async () => {
    await drop(
      'bank.json',
      spoilt((scene) => {
        (scene.tracks as { alignment: { lengthMm: unknown }[] }[])[0].alignment[0].lengthMm = 'long';
        scene.showing = scene.shows;
      }),
    );
    const { title, places } = await explained();
    expect(title).toBe('“bank.json” could not be opened');
    expect(places).toHaveLength(2);
    expect(places).toContainEqual({
      path: 'tracks[0].alignment[0].lengthMm',
      found: '"long"',
      allowed: expect.stringMatching(/^a number from \S+ to \S+/),
      example: expect.stringMatching(/^\d+$/),
    });
    expect(places).toContainEqual({
      path: 'showing',
      found: 'a field that is not known here',
      allowed: expect.stringContaining('shows'),
      example: expect.stringMatching(/^"shows": "[^"]+"$/),
    });
    await opened.shot('wrong-file');
    expect(await graveViolations(opened.page, 'dialog')).toEqual([]);
    await closeOnLastGood();
  });

  it('with a name that leads nowhere is explained with the names there are', async () => {
    await choose(
      'bank.json',
      spoilt((scene) => {
        scene.trials[1].train = 'night-mail';
      }),
    );
    const { places } = await explained();
    expect(places).toEqual([
      {
        path: 'trials[1].train',
        found: '"night-mail", which is not in this file',
        allowed: 'one of "branch"',
        example: '"branch"',
      },
    ]);
    await closeOnLastGood();
  });

  it('that is no JSON, or of a newer Gradewright, is refused kindly', async () => {
    await choose('notes.json', 'Wagons to mend: 4, 7');
    expect(await explained()).toMatchObject({ title: '“notes.json” is no railway file', places: [] });
    await closeOnLastGood();
    await drop('package.json', '{ "name": "something else", "version": 3, "scripts": {}, "private": true }');
    expect(await explained()).toMatchObject({ title: '“package.json” is no railway file', places: [] });
    await closeOnLastGood();
    await choose('torn.json', '{ "gradewright": 1, "name": Wren');
    expect((await explained()).places).toEqual([
      {
        path: 'line 1, column 29',
        found: expect.stringContaining('Wren is no value'),
        allowed: 'a scene file in JSON',
        example: expect.stringContaining('"gradewright": 1'),
      },
    ]);
    await closeOnLastGood();
    await choose(
      'from-tomorrow.json',
      spoilt((scene) => {
        scene.gradewright = 7;
        scene.weather = { rain: true };
      }),
    );
    const { places } = await explained();
    expect(places).toEqual([
      {
        path: 'gradewright',
        found: 'version 7, made by a newer Gradewright',
        allowed: expect.stringContaining('nothing is lost'),
        example: '1',
      },
    ]);
    await closeOnLastGood();
  });

  it('is opened when it is right, and nothing in it becomes part of the page', async () => {
    const { page } = opened;
    const name = '<img src=x onerror="document.title=1"> Bank';
    await drop(
      'bank.json',
      spoilt((scene) => {
        scene.name = name;
      }),
    );
    const now = await untilSolved(page, 'pulled-up');
    expect(now.scene).toBe(name);
    expect(await page.getByRole('banner').textContent()).toContain(name);
    expect(await page.title()).toContain(name);
    expect(await page.locator('img').count()).toBe(0);
  });

  it('comes out as it went in', async () => {
    const { page } = opened;
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('banner').getByRole('button', { name: 'Save' }).click(),
    ]);
    expect(saved.suggestedFilename()).toMatch(/^[a-z0-9-]+\.json$/);
    const text = await readFile(await saved.path(), 'utf8');
    const original = spoilt((scene) => {
      scene.name = JSON.parse(text).name;
    });
    expect(JSON.parse(text)).toEqual(JSON.parse(original));
  });

  it('was handled without a complaint', () => {
    expect(opened.complaints).toEqual([]);
    expect(opened.foreign).toEqual([]);
  });
});
