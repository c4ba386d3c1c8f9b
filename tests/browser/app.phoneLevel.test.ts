import type { CDPSession } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { openSolved } from './screen.ts';

let opened: Opened;
let sensor: CDPSession;

/** The phone lies with its top end towards `heading`, its long edge rising by `pitch`, degrees. */
const lie = (heading: number, pitch: number) =>
  sensor.send('DeviceOrientation.setDeviceOrientationOverride', { alpha: heading, beta: pitch, gamma: 0 });

const sheet = () => opened.page.getByRole('region', { name: 'Survey' });
const press = (name: string | RegExp) => sheet().getByRole('button', { name }).click();

beforeAll(async () => {
  opened = await openSolved({ still: true, touch: true, width: 390, height: 844 });
  sensor = await opened.page.context().newCDPSession(opened.page);
  const chapters = opened.page.getByRole('navigation', { name: 'Chapters' });
  await chapters.getByRole('button', { name: 'Survey', exact: false }).first().click();
  await press('Begin a survey');
  await press(/^Stand at the track/);
});

afterAll(() => opened?.close());

describe('the phone as the level', () => {
  it('says so where there is no sensor, and leaves the field to type in', async () => {
    await press('This phone is the level');
    await sheet()
      .getByText(/This machine tells no tilt/)
      .waitFor();
    expect(await sheet().getByRole('textbox').count()).toBe(1);
  });

  it('is calibrated by two faces: 1.0° and, end for end, 0.4° are 0.7° of error', async () => {
    await lie(10, 1);
    await press('This phone is the level');
    await press('Read the first face');
    await sheet().getByRole('button', { name: 'Read the second face' }).waitFor();
    await lie(191, 0.4);
    await press('Read the second face');
    // tan 0.7° = 1.22 %.
    await sheet()
      .getByText(/shows 1\.22\s%.* on the level/)
      .waitFor();
  });

  it('reads when it lies still, its error taken off: 2.0° shown are 1.3°, 2.269 %', async () => {
    const { page } = opened;
    await lie(90, 2);
    await sheet()
      .getByText(/lies still/)
      .waitFor();
    expect(await graveViolations(page, '.survey')).toEqual([]);
    await opened.shot('survey-phone');
    await press(/^Read, then/);
    await page.waitForFunction(() => window.gradewright!.session.scene?.surveys?.at(-1)?.readings.length === 1);
    const taken = await page.evaluate(() => window.gradewright!.session.scene?.surveys?.at(-1)?.readings[0]);
    expect(taken).toMatchObject({ kind: 'grade', gradePercent: 2.269, baseMm: 150, instrument: 'phone' });
  });

  it('was shown without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
