import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bundledScene } from '../scene/sample.ts';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { openSolved, until, untilSolved } from './screen.ts';

const scene = bundledScene('08-harebell-spiral.json');
const survey = scene.surveys?.[0];
const readings = survey?.readings ?? [];
const [width, height] = [390, 844];

let opened: Opened;
/** Keys pressed since the first place. */
let keys = 0;

const sheet = () => opened.page.getByRole('region', { name: 'Survey' });
const taken = () => opened.page.evaluate(() => window.gradewright!.session.scene?.surveys?.[0]?.readings ?? []);
const press = async (key: string, times = 1) => {
  for (let i = 0; i < times; i++) await opened.page.keyboard.press(key);
  keys += times;
};
const enter = async (value: number) => {
  const text = String(value);
  await opened.page.keyboard.type(text);
  keys += text.length;
  await press('Enter');
};
const stand = () =>
  sheet()
    .getByRole('button', { name: /^Stand at the track/ })
    .click();
const done = () => sheet().getByRole('button', { name: 'Done' }).click();

beforeAll(async () => {
  opened = await openSolved({ still: true, touch: true, width, height });
  const { page } = opened;
  const { surveys: _surveys, ...bare } = scene;
  await page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], 'spiral.json'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
  }, JSON.stringify(bare));
  await until(page, { scene: scene.name });
  await untilSolved(page);
  await page.getByRole('navigation', { name: 'Chapters' }).getByRole('button', { name: 'Survey' }).tap();
  if (!(await sheet().isVisible())) await page.getByRole('button', { name: 'Survey sheet' }).tap();
  await sheet().getByRole('button', { name: 'Begin a survey' }).tap();
});

afterAll(() => opened?.close());

describe('forty readings typed at a spiral, on a phone', () => {
  it('leaves most of the screen to the work: the header is two rows of what a finger hits', async () => {
    const box = await opened.page.getByRole('banner').boundingBox();
    expect(box?.height).toBeLessThanOrEqual(124);
    const outside = await opened.page
      .getByRole('banner')
      .getByRole('button')
      .evaluateAll(
        (buttons, wide) =>
          buttons.flatMap((button) => {
            const { left, right, width, height } = button.getBoundingClientRect();
            return left < 0 || right > wide || width < 44 || height < 44 ? [button.textContent] : [];
          }),
        width,
      );
    expect(outside).toEqual([]);
    await opened.shot('phone-header');
  });

  it('takes the grades, place after place, with their digits and Enter and nothing else', async () => {
    await stand();
    for (const [index, reading] of readings.entries()) {
      if (reading.kind !== 'grade' || reading.turned === true) continue;
      await enter(reading.gradePercent ?? Number.NaN);
      if (index === 4) {
        const stage = await opened.page.getByRole('main', { name: 'Stage' }).boundingBox();
        expect(stage?.y).toBeLessThan(height / 4);
        await opened.page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 1500)));
        await opened.shot('phone-walk');
      }
    }
    const walked = readings.filter((one) => one.kind === 'grade' && one.turned !== true);
    await expect.poll(taken).toEqual(walked);
    // Three figures and Enter a reading.
    expect(keys).toBe(4 * walked.length);
  });

  it('takes two of them again with the level end for end', async () => {
    const turned = readings.filter((one) => one.kind === 'grade' && one.turned === true);
    await sheet()
      .getByRole('checkbox', { name: /^Level turned end for end/ })
      .check();
    // Back from the last place to span 16 to 17 of 24, then from the one after it to span 5 to 6.
    await sheet().getByRole('textbox').focus();
    await press('ArrowUp', 7);
    await enter(turned[1].kind === 'grade' ? (turned[1].gradePercent ?? Number.NaN) : Number.NaN);
    await press('ArrowUp', 12);
    await enter(turned[0].kind === 'grade' ? (turned[0].gradePercent ?? Number.NaN) : Number.NaN);
    await done();
    expect((await taken()).slice(-2)).toEqual([turned[1], turned[0]]);
  });

  it('takes the heights with a rule from the laser line, passing by what cannot be reached', async () => {
    await sheet().getByRole('radio', { name: 'Laser or rule' }).check();
    const line = sheet().getByRole('textbox', { name: 'Counted from' });
    await line.fill('laser');
    await line.press('Enter');
    await stand();
    let at = 1;
    for (const reading of readings) {
      if (reading.kind !== 'height' || reading.support === undefined) continue;
      await press('ArrowDown', reading.support - at);
      await enter(reading.heightMm);
      at = reading.support + 1;
    }
    await opened.shot('phone-walk-heights');
    await done();
    const heights = readings.filter(({ kind }) => kind === 'height');
    expect((await taken()).slice(-heights.length)).toEqual(heights);
    expect(await taken()).toHaveLength(40);
  });

  it('ends in the two nuts to turn, and in the figures to check them by hand', async () => {
    const { page } = opened;
    const asked = Date.now();
    await sheet().getByRole('radio', { name: 'Heights', exact: true }).check();
    await sheet().getByText('Supports 6 and 17 are off.', { exact: true }).waitFor();
    const seen = Date.now();
    await sheet().getByRole('radio', { name: 'Mend', exact: true }).check();
    await sheet().getByRole('button', { name: 'Find what to turn' }).tap();
    await sheet().getByText('Turn the nuts of supports 6 and 17.', { exact: true }).waitFor();
    console.info(
      `${keys} keys for 40 readings; heights after ${seen - asked} ms, nuts after ${Date.now() - seen} ms more.`,
    );
    await sheet().getByText('Check it by hand').tap();
    const checks = await sheet().locator('.hand-check caption').allTextContents();
    // 2.8 and 2.2 mm were put in; with the coarse thread of M8, 1.25 mm a turn (ISO 261).
    expect(checks).toEqual([
      expect.stringMatching(
        /^Support 6: 2\.[6-9]\d\smm high ± .* ÷ 1\.25 mm a turn of M8 = 2 (1\/8|1\/4|3\/8) turns down$/,
      ),
      expect.stringMatching(
        /^Support 17: 2\.[0-3]\d\smm low ± .* ÷ 1\.25 mm a turn of M8 = 1 (1\/2|5\/8|3\/4|7\/8) turns up$/,
      ),
    ]);
    await sheet().locator('.hand-check').first().scrollIntoViewIfNeeded();
    await opened.shot('phone-check');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(await graveViolations(page)).toEqual([]);
    expect(opened.complaints).toEqual([]);
  });
});
