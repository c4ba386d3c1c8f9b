import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Scene } from '../../src/scene/index.ts';
import { bundledScene } from '../scene/sample.ts';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { openSolved, until, untilSolved } from './screen.ts';

const spiral = bundledScene('08-harebell-spiral.json');
/** The survey of the spiral, whose person would have no steeper grade than 2.5 %. */
const scene: Scene = {
  ...spiral,
  surveys: (spiral.surveys ?? []).map((one) => ({ ...one, mend: { ...one.mend, greatestGradePercent: 2.5 } })),
};

let opened: Opened;

const sheet = () => opened.page.getByRole('region', { name: 'Survey' });
const wishes = () => opened.page.evaluate(() => window.gradewright!.session.scene?.surveys?.[0].mend);
const fill = async (name: string, text: string) => {
  const field = sheet().getByRole('textbox', { name });
  await field.fill(text);
  await field.press('Enter');
};
const look = () =>
  sheet()
    .getByRole('button', { name: /^(Find what to turn|Look again)$/ })
    .click();

/** Hands a scene to the page as if its file were dropped on it, and waits until it is solved. */
async function drop(dropped: Scene) {
  const { page } = opened;
  await page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], 'spiral.json'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
  }, JSON.stringify(dropped));
  await until(page, { scene: dropped.name });
  await untilSolved(page);
}

beforeAll(async () => {
  opened = await openSolved({ still: true });
  await drop(scene);
  await opened.page.keyboard.press('5');
  await sheet().getByRole('radio', { name: 'Mend', exact: true }).check();
});

afterAll(() => opened?.close());

describe('what a mending has to keep', () => {
  it('is by the plan again where a field is emptied, and the thread is the one that was chosen', async () => {
    const grade = sheet().getByRole('textbox', { name: 'Greatest grade' });
    expect(await grade.inputValue()).toBe('2.5');
    await fill('Greatest grade', '');
    // The plan climbs at 2.2 %, and half a per cent more is let pass where nothing is said.
    await expect.poll(() => grade.getAttribute('placeholder')).toMatch(/^2\.70\s%$/);
    const thread = sheet().getByRole('combobox', { name: 'Thread' });
    await thread.selectOption('M6');
    expect((await wishes())?.thread).toBe('M6');
    await expect.poll(() => thread.inputValue()).toBe('M6');
    await thread.selectOption('M8');
  });
});

describe('limits that clash', () => {
  it('are named, with what each would have to become', async () => {
    await fill('Greatest grade', '2.2');
    await fill('Least grade', '2.15');
    await fill('Most a support goes down', '1');
    await look();
    await sheet().getByText('The limits cannot all be kept.', { exact: true }).waitFor();
    const said = await sheet().locator('.evidence').allTextContents();
    expect(said[0]).toMatch(/^What cannot be kept together: the greatest grade, the most a support is lowered, at /);
    expect(said[1]).toBe('Easing any one of these is enough:');
    expect(said[2]).toMatch(/^The greatest grade would have to be 2\.\d\d\s% instead of 2\.20\s% /);
    expect(said[3]).toMatch(/^The most a support is lowered would have to be 2\.\d\d\smm instead of 1\.00\smm /);
    expect(await graveViolations(opened.page, '.survey')).toEqual([]);
    await opened.shot('survey-clash');
  });

  it('are eased with one press as told, and then can be kept', async () => {
    const ease = sheet().getByRole('button', { name: /for the most a support is lowered$/ });
    const told = /^Allow (\S+)\smm /.exec((await ease.textContent()) ?? '')?.[1];
    await ease.click();
    await sheet()
      .getByText(/^Turn the nuts of supports .*\.$/)
      .waitFor();
    expect((await wishes())?.largestDropMm).toBe(Number(told));
    expect(await sheet().getByRole('textbox', { name: 'Most a support goes down' }).inputValue()).toBe(told);
    expect(await sheet().getByRole('table', { name: 'Limits' }).getByRole('columnheader').allTextContents()).toContain(
      'then',
    );
    await opened.shot('survey-eased');
  });

  it('are as they were after one undo', async () => {
    await opened.page.keyboard.press('Control+z');
    await expect.poll(async () => (await wishes())?.largestDropMm).toBe(1);
    expect(await sheet().getByRole('button', { name: 'Find what to turn' }).count()).toBe(1);
  });

  it('that only give way together are eased together', async () => {
    await fill('Most a support goes down', '10');
    await fill('Greatest grade', '2.1');
    await fill('Least grade', '2.3');
    await look();
    await sheet().getByText('No limit alone can be eased enough. All of these together would do:').waitFor();
    await sheet().getByRole('button', { name: 'Ease all 2 limits so' }).click();
    await sheet()
      .getByText(/^Turn the nuts of supports .*\.$/)
      .waitFor();
    expect(await wishes()).toMatchObject({ greatestGradePercent: 2.2, leastGradePercent: 2.2 });
  });

  it('of supports not to be touched are met by touching them', async () => {
    await fill('Greatest grade', '2.7');
    await fill('Least grade', '1.7');
    await fill('Most a support goes up', '1');
    await fill('Most a support goes down', '1');
    await fill('Supports not to be touched', '1, 6, 17, 25');
    await look();
    await sheet().getByRole('button', { name: 'Let supports 6, 17 be touched' }).click();
    await sheet()
      .getByText(/^Turn the nuts of supports .*\.$/)
      .waitFor();
    expect((await wishes())?.locked).toEqual([1, 25]);
  });
});

describe('a deck that lies wrongly across, at heights that need nothing', () => {
  it('has its work on one sheet of paper too', async () => {
    const { page } = opened;
    const along = (spiral.surveys?.[0].readings ?? []).map((one) => {
      if (one.kind === 'grade') return { ...one, gradePercent: one.turned === true ? 2.1 : 2.3 };
      if (one.kind !== 'height') return one;
      return { ...one, heightMm: one.heightMm + (one.support === 6 ? -2.8 : one.support === 17 ? 2.1 : 0) };
    });
    const across = [0, 0, 12, 0].map((crossPercent, i) => ({ kind: 'cross' as const, support: i + 1, crossPercent }));
    const surveys = (spiral.surveys ?? []).map((one) => ({ ...one, readings: [...along, ...across] }));
    await drop({ ...spiral, name: 'Leaning spiral', surveys });
    await sheet().getByRole('radio', { name: 'Mend', exact: true }).check();
    await sheet().getByRole('button', { name: 'Find what to turn' }).click();
    await sheet().getByText('No shim is advised: no support is shown to be off.', { exact: true }).waitFor();
    const advice = sheet().getByRole('list', { name: 'Across the deck' });
    await advice.getByText(/^At support 3 the right rail stands 2\.10\smm /).waitFor();
    expect(await sheet().getByRole('button', { name: 'Print the work sheet' }).count()).toBe(1);
    await opened.shot('survey-across');
    await page.evaluate(() => {
      document.body.dataset.print = 'work-sheet';
    });
    await page.emulateMedia({ media: 'print' });
    const paper = (await page.pdf({ format: 'A4' })).toString('latin1');
    expect(paper.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    expect(await page.locator('.work-sheet h1').textContent()).toBe('Set the deck right across at support 3.');
    // 12 % over 17.5 mm between the middles of the rail heads is 2.10 mm, half of it on either side.
    const cells = await page.locator('.work-sheet .across-work tbody tr').locator('th, td').allTextContents();
    expect(cells.map((cell) => cell.replace(/\s/g, ' '))).toEqual([
      ...['', 'support 3', 'left side by 1.05 mm', 'right side by 1.05 mm', '+2.10 mm', '0.00 mm', ''],
    ]);
    expect(await page.locator('.work-sheet').textContent()).not.toContain('Check by hand');
    await opened.shot('survey-across-paper');
    await page.emulateMedia({ media: null });
    await page.evaluate(() => {
      delete document.body.dataset.print;
    });
    expect(await graveViolations(page, '.survey')).toEqual([]);
  });

  it('was shown without a complaint', () => {
    expect(opened.complaints).toEqual([]);
    expect(opened.foreign).toEqual([]);
  });
});
