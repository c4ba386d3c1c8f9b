import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { riskById } from '../../src/core/risks/index.ts';
import { trackPoint } from '../../src/core/track/index.ts';
import type { TrackPoint } from '../../src/core/track/types.ts';
import { compileScene } from '../../src/sim/index.ts';
import { bundledScene } from '../scene/sample.ts';
import { graveViolations } from './axe.ts';
import type { Opened } from './harness.ts';
import { failing, openSolved, read, type Screen, until } from './screen.ts';

const track = compileScene(bundledScene('01-wren-gill.json')).tracks.get('gill-line')!;

let opened: Opened;
let first: Screen;

beforeAll(async () => {
  opened = await openSolved({ still: true });
  first = await read(opened.page);
});

afterAll(() => opened?.close());

/** Where the playhead stands on the window, px. */
const playheadX = async (): Promise<number> => {
  const box = await opened.page.locator('.gwb-playhead').boundingBox();
  if (!box) throw new Error('There is no playhead.');
  return box.x + box.width / 2;
};

/** What the flag under the playhead says, m. */
const flagged = async (): Promise<number> => Number(await opened.page.locator('.gwb-flag').textContent());

const band = () => opened.page.getByRole('region', { name: 'Section band' });
const row = (name: string) => band().getByRole('slider', { name: `${name}, at the playhead` });

describe('the moment that is looked at', () => {
  it('stands still for a person who wants little motion, until Space plays and stops it', async () => {
    const { page } = opened;
    expect(first).toMatchObject({ playing: false, time: 0 });
    await page.keyboard.press('Space');
    await until(page, ({ playing, time, stage }) => playing && time > 0.5 && !!stage && stage.time > 0.5);
    await page.keyboard.press('Space');
    const { time } = await until(page, { playing: false });
    const { stage } = await until(page, (now) => now.stage?.time === now.time);
    expect(stage?.time).toBe(time);
  });

  it('goes from event to event with the full stop, and back with the comma', async () => {
    const { page } = opened;
    const run = await page.evaluate(() => window.gradewright!.session.result!.run.events.map(({ time }) => time));
    const stops: number[] = [];
    for (;;) {
      const { time: before } = await read(page);
      await page.keyboard.press('.');
      const { time, playing } = await read(page);
      expect(playing).toBe(false);
      if (time === before) break;
      expect(time).toBeGreaterThan(before);
      stops.push(time);
    }
    // Every event of the run and the failing finding is one of the stops, or shares one.
    for (const time of [...run, failing(first).time].filter((one) => one > stops[0])) {
      expect(stops.some((stop) => Math.abs(stop - time) < 0.06)).toBe(true);
    }
    expect(stops.length).toBeGreaterThanOrEqual(run.length - 1);
    expect(stops.at(-1)).toBe(first.duration);
    for (const stop of stops.slice(0, -1).reverse()) {
      await page.keyboard.press(',');
      expect((await read(page)).time).toBe(stop);
    }
  });

  it('goes where the band is pressed, and the stage with it', async () => {
    const { page } = opened;
    const nine = await band().locator('.gwb-axis-figure', { hasText: /^9$/ }).boundingBox();
    const section = await row('Section').boundingBox();
    if (!nine || !section) throw new Error('The band has no place 9.');
    const x = Math.round(nine.x + nine.width / 2);
    await page.mouse.click(x, section.y + section.height / 2);
    // Drawn on whole pixels.
    expect(Math.abs((await playheadX()) - x)).toBeLessThanOrEqual(1);
    // A pixel of the axis is 2 cm here; the figure's own middle may be half of one off.
    expect(Math.abs((await flagged()) - 9)).toBeLessThan(0.03);
    const { stage } = await until(page, (now) => now.stage?.time === now.time);
    const at = trackPoint(track, await flagged(), {} as TrackPoint);
    // The first vehicle is half a train ahead of the place, and no further.
    const [x0 = 0, y0 = 0, z0 = 0] = stage?.firstVehicle ?? [];
    const away = Math.hypot(x0 - at.x, y0 - at.y, z0 - at.z);
    expect(away).toBeGreaterThan(0.1);
    expect(away).toBeLessThan(0.6);
  });

  it('chooses the joint whose force is pressed, at the moment it passes there', async () => {
    const { page } = opened;
    const carpet = await row('Coupler force').boundingBox();
    if (!carpet) throw new Error('There is no carpet.');
    await page.mouse.click(carpet.x + carpet.width / 2, carpet.y + 3 + 2.5 * 11);
    const { time } = await until(page, { chosenJoint: 2 });
    expect(time).toBeGreaterThan(0);
    expect(await page.getByRole('slider', { name: 'Chosen joint' }).getAttribute('aria-valuenow')).toBe('3');
  });

  it('follows the arrow keys by a pixel, by a support and to the ends', async () => {
    const { page } = opened;
    await row('Section').focus();
    const start = await playheadX();
    const { time } = await read(page);
    await page.keyboard.press('ArrowRight');
    expect(Math.abs((await playheadX()) - start - 1)).toBeLessThanOrEqual(1);
    expect((await read(page)).time).toBeGreaterThan(time);
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    expect((await read(page)).time).toBeLessThan(time);
    await page.keyboard.press('Shift+ArrowRight');
    const supports = track.spec.profile.strip?.supports ?? [];
    const place = await flagged();
    expect(supports.some(({ chainage }) => Math.abs(chainage - place) < 0.006)).toBe(true);
    await page.keyboard.press('Home');
    expect((await read(page)).time).toBe(0);
    await page.keyboard.press('End');
    expect((await read(page)).time).toBeGreaterThan(0.9 * first.duration);
  });

  it('plays at the rate that is chosen, along the track or along time', async () => {
    const { page } = opened;
    await band().getByRole('radio', { name: 'four times real speed' }).click();
    await until(page, { rate: 4 });
    await band().getByRole('radio', { name: 'in time' }).click();
    await until(page, { axis: 'time' });
    const section = await row('Section').boundingBox();
    if (!section) throw new Error('There is no section row.');
    await page.mouse.click(section.x + section.width / 2, section.y + section.height / 2);
    // On the axis of time the middle is half the trial; a pixel is a thousandth of it.
    const { time } = await read(page);
    expect(Math.abs(time - first.duration / 2)).toBeLessThan(first.duration / 400);
    await opened.shot('axis-of-time');
    await band().getByRole('radio', { name: 'along the track' }).click();
    await until(page, { axis: 'chainage' });
    await band().getByRole('radio', { name: 'real speed', exact: true }).click();
    await until(page, { rate: 1 });
  });
});

describe('a finding', () => {
  it('leads to its moment, its joint and its place', async () => {
    const { page } = opened;
    const { time, subject, chainage } = failing(first);
    await row('Section').press('Home');
    const headline = page.getByRole('article').first().getByRole('heading').getByRole('button');
    await headline.focus();
    await page.keyboard.press('Enter');
    const now = await until(page, { time, playing: false, chosenFinding: 0, chosenJoint: subject });
    expect(await page.getByRole('article').first().getAttribute('aria-current')).toBe('true');
    expect(Math.abs((await flagged()) - chainage)).toBeLessThan(0.006);
    const { stage } = await until(page, (drawn) => drawn.stage?.time === now.time);
    const { x, y, z } = trackPoint(track, chainage, {} as TrackPoint);
    const away = (eye: readonly number[] = []) => Math.hypot(eye[0] - x, eye[1] - y, eye[2] - z);
    expect(away(stage?.eye)).toBeLessThan(0.75 * away(first.stage?.eye));
    // The ring round the joint stands in the middle of the picture.
    const ring = await page.locator('.stage-ring').boundingBox();
    const picture = await page.locator('.stage-picture').boundingBox();
    if (!ring || !picture) throw new Error('No joint is ringed.');
    expect(Math.abs(ring.x + ring.width / 2 - picture.x - picture.width / 2)).toBeLessThan(picture.width / 6);
    expect(Math.abs(ring.y + ring.height / 2 - picture.y - picture.height / 2)).toBeLessThan(picture.height / 6);
    await opened.shot('finding');
  });

  it('about a vehicle leads to that vehicle, and the readouts with it', async () => {
    const { page } = opened;
    const index = first.findings!.findIndex(({ risk }) => riskById(risk).subject === 'vehicle');
    const { time, chainage } = first.findings![index];
    await page.getByRole('article').nth(index).getByRole('heading').getByRole('button').click();
    await until(page, { time, chosenFinding: index, chosenJoint: null });
    expect(Math.abs((await flagged()) - chainage)).toBeLessThan(0.006);
    await page.getByRole('article').first().getByRole('heading').getByRole('button').click();
    await until(page, { chosenFinding: 0 });
  });

  it('is magnified to the offset that fails, slowed down, and let go with Escape', async () => {
    const { page } = opened;
    const { subject, value, limit } = failing(first);
    await page.getByRole('button', { name: 'Magnify' }).click();
    await until(page, ({ lensOpen, stage }) => lensOpen && stage?.lens?.share === 1);
    expect((await read(page)).stage?.lens?.joint).toBe(subject);
    expect((await read(page)).rate).toBe(1 / 20);
    const offset = `${(value * 1000).toFixed(1)}\u2009mm`;
    await page.locator('.stage-lens-mark.stage-lens-number', { hasText: offset }).waitFor();
    const sheet = page.getByRole('region', { name: `Joint ${subject + 1}` });
    const total = sheet.getByRole('listitem').filter({ hasText: 'as it stands' });
    expect(await total.textContent()).toContain((value * 1000).toFixed(1));
    const drawn = sheet.getByRole('img', { name: 'holds' });
    expect(await drawn.getAttribute('aria-label')).toContain((limit * 1000).toFixed(1));
    await opened.shot('lens');
    expect(await graveViolations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await until(page, ({ lensOpen, stage }) => !lensOpen && stage?.lens === null);
    expect((await read(page)).rate).toBe(1);
  });

  it('is magnified with a key too, from each side', async () => {
    const { page } = opened;
    await page.keyboard.press('m');
    await until(page, ({ lensOpen, stage }) => lensOpen && stage?.lens?.share === 1);
    for (const [view, words] of [
      ['Above', 'from above'],
      ['Along', 'along the train'],
      ['Side', 'from the side'],
    ] as const) {
      await page.getByRole('toolbar', { name: 'Magnifier' }).getByRole('button', { name: view }).click();
      await page.getByRole('heading', { level: 2, name: words }).waitFor();
    }
    await page.keyboard.press('m');
    await until(page, { lensOpen: false });
  });

  it('was shown without a complaint', () => {
    expect(opened.complaints).toEqual([]);
  });
});
