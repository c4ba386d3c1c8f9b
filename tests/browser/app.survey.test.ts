import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundledScene } from '../scene/sample.ts';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { openSolved, until, untilSolved } from './screen.ts';

const scene = bundledScene('08-harebell-spiral.json');
const readings = scene.surveys?.[0].readings ?? [];

/** Taken with the level between supports, in order: these are typed. The level stands end for end in the others of these places. */
const typed = readings.flatMap((reading) =>
  reading.kind === 'grade' && reading.turned !== true && reading.gradePercent !== undefined ? [reading] : [],
);
const byHand = typed.slice(0, 3);
const rest = readings.filter((reading) => !byHand.some((one) => one === reading));

/** What was written down at the track: everything that is not typed, as one table. */
const table = [
  'base = 300 mm',
  'line = laser',
  'support; chainage mm; grade %; turned %; height mm',
  ...rest.map((reading) => {
    if (reading.kind === 'height') return `${reading.support};;;;${reading.heightMm}`;
    if (reading.kind !== 'grade') throw new Error(`The survey of this scene has a ${reading.kind}.`);
    const cells = reading.turned === true ? `;${reading.gradePercent}` : `${reading.gradePercent};`;
    return `${reading.support ?? ''};${reading.atMm ?? ''};${cells};`;
  }),
].join('\n');

let opened: Opened;

/** Hands a file to the page as if it were dropped on it. */
const drop = (name: string, text: string) =>
  opened.page.evaluate(
    (file) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([file.text], file.name));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
    },
    { name, text },
  );

const sheet = () => opened.page.getByRole('region', { name: 'Survey' });
const offs = () =>
  opened.page.evaluate(() => {
    const supports = window.gradewright!.session.scene?.tracks[0].supports;
    return supports !== undefined && 'everyMm' in supports ? (supports.off ?? []) : [];
  });

beforeAll(async () => {
  opened = await openSolved({ still: true });
  const { surveys: _surveys, ...bare } = scene;
  await drop('spiral.json', JSON.stringify(bare));
  await until(opened.page, { scene: scene.name });
  await untilSolved(opened.page);
});

afterAll(() => opened?.close());

describe('a person at a spiral with a level', () => {
  it('begins a survey and types readings with the keyboard alone', async () => {
    const { page } = opened;
    await page.keyboard.press('5');
    await sheet().getByRole('button', { name: 'Begin a survey' }).click();
    await sheet()
      .getByRole('button', { name: /^Stand at the track/ })
      .click();
    for (const { gradePercent } of byHand) {
      await page.keyboard.type(String(gradePercent));
      await page.keyboard.press('Enter');
    }
    await page.waitForFunction(() => window.gradewright!.session.scene?.surveys?.[0].readings.length === 3);
    const taken = await page.evaluate(() => window.gradewright!.session.scene?.surveys?.[0].readings);
    expect(taken).toEqual(byHand);
    expect((await until(page, { progress: null })).findings).not.toBeNull();
    await opened.shot('survey-walk');
    await sheet().getByRole('button', { name: 'Done' }).click();
  });

  it('drops the table that was written down, and reads the whole of it', async () => {
    await drop('readings.csv', table);
    await sheet()
      .getByRole('button', { name: `Take ${rest.length} readings` })
      .click();
    await opened.page.waitForFunction(
      (count) => window.gradewright!.session.scene?.surveys?.[0].readings.length === count,
      readings.length,
    );
  });

  it('sees exactly the two supports that are off', async () => {
    const { page } = opened;
    await sheet().getByRole('radio', { name: 'Heights', exact: true }).check();
    await sheet().getByText('Supports 6 and 17 are off.', { exact: true }).waitFor();
    expect(await page.evaluate(() => window.gradewright!.session.surveyed?.pointed)).toEqual([5, 16]);
    expect(await sheet().locator('.heights tr.off th').allTextContents()).toEqual(['6', '17']);
    await opened.shot('survey-heights');
  });

  it('is told which nuts to turn, in the worker and without the network', async () => {
    await sheet().getByRole('radio', { name: 'Mend', exact: true }).check();
    await sheet().getByRole('button', { name: 'Find what to turn' }).click();
    await sheet().getByText('Turn the nuts of supports 6 and 17.', { exact: true }).waitFor();
    expect(await sheet().locator('.shims tbody th').allTextContents()).toEqual(['6', '17']);
    await sheet().getByText('Check it by hand').click();
    await opened.shot('survey-mend');
    expect(await graveViolations(opened.page, '.survey')).toEqual([]);
    expect(opened.foreign).toEqual([]);
  });

  it('has it on one sheet of paper, with every support in it', async () => {
    const { page } = opened;
    await page.evaluate(() => {
      document.body.dataset.print = 'work-sheet';
    });
    await page.emulateMedia({ media: 'print' });
    const paper = (await page.pdf({ format: 'A4' })).toString('latin1');
    expect(paper.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    expect(await page.locator('.work-sheet tbody th').allTextContents()).toEqual(['6', '17']);
    expect(await graveViolations(page, '.work-sheet')).toEqual([]);
    await page.emulateMedia({ media: null });
    await page.evaluate(() => {
      delete document.body.dataset.print;
    });
  });

  it('puts what was found into the railway, and takes it out with one undo', async () => {
    const { page } = opened;
    await sheet().getByRole('button', { name: 'Use the estimate as the as-built railway' }).click();
    await page.waitForFunction(() => {
      const supports = window.gradewright!.session.scene?.tracks[0].supports;
      return supports !== undefined && 'everyMm' in supports && supports.off?.length === 2;
    });
    expect((await offs()).map(({ support }) => support)).toEqual([6, 17]);
    await page.keyboard.press('Control+z');
    await untilSolved(page);
    expect(await offs()).toEqual([]);
  });

  it('measures across the rails, one support after another, and tells the twist', async () => {
    const { page } = opened;
    await sheet().getByRole('radio', { name: 'Readings', exact: true }).check();
    expect(await graveViolations(page, '.survey')).toEqual([]);
    await sheet().getByRole('radio', { name: 'Level across the rails' }).check();
    await sheet()
      .getByRole('button', { name: /^Stand at the track/ })
      .click();
    for (const crossPercent of [0, 0, 12, 0]) {
      await page.keyboard.type(String(crossPercent));
      await page.keyboard.press('Enter');
    }
    await sheet().getByRole('button', { name: 'Done' }).click();
    await sheet().getByRole('radio', { name: 'Heights', exact: true }).check();
    await sheet()
      .getByText(/^At support 3 the right rail stands/)
      .waitFor();
    const across = await page.evaluate(() =>
      window.gradewright!.session.scene?.surveys?.[0].readings.flatMap((one) => (one.kind === 'cross' ? [one] : [])),
    );
    expect(across?.map(({ support, crossPercent }) => [support, crossPercent])).toEqual([
      [1, 0],
      [2, 0],
      [3, 12],
      [4, 0],
    ]);
  });

  it('measures again after the work and says which two supports went where', async () => {
    const { page } = opened;
    // What the same places show once both nuts are turned: every grade as the others, both heights back by what was wrong.
    const turned = readings.map((reading) => {
      if (reading.kind === 'grade') return { ...reading, gradePercent: reading.turned === true ? 2.1 : 2.3 };
      if (reading.kind !== 'height') return reading;
      const by = reading.support === 6 ? -2.8 : reading.support === 17 ? 2.1 : 0;
      return { ...reading, heightMm: reading.heightMm + by };
    });
    await sheet().getByRole('button', { name: 'New survey' }).click();
    await drop(
      'again.csv',
      [
        'base = 300 mm',
        'line = laser',
        'support; chainage mm; grade %; turned %; height mm',
        ...turned.map((one) => {
          if (one.kind === 'height') return `${one.support};;;;${one.heightMm.toFixed(1)}`;
          if (one.kind !== 'grade') return '';
          return `${one.support ?? ''};${one.atMm ?? ''};${one.turned === true ? `;${one.gradePercent}` : `${one.gradePercent};`};`;
        }),
      ].join('\n'),
    );
    await sheet()
      .getByRole('button', { name: `Take ${readings.length} readings` })
      .click();
    await page.waitForFunction(() => window.gradewright!.session.scene?.surveys?.length === 2);
    await sheet().getByRole('radio', { name: 'Heights', exact: true }).check();
    await sheet().getByRole('combobox', { name: 'What changed since' }).selectOption({ index: 1 });
    const changed = sheet().getByRole('list', { name: 'What changed' });
    await changed.getByText(/^Support 6 went down by/).waitFor();
    await changed.getByText(/^Support 17 went up by/).waitFor();
    expect(await changed.getByRole('listitem').count()).toBe(3);
    await opened.shot('survey-again');
  });

  it('was shown without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
