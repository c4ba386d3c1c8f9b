import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { clubPageHtml } from '../../../src/export/page/index.ts';
import { parseScene, type Scene, sceneInPage } from '../../../src/scene/index.ts';
import { createInProcessHost } from '../../../src/sim/index.ts';
import { type ClubPage, gatherPage } from '../../../src/sim/page/index.ts';

const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;

function sceneAt(name: string): Scene {
  const parsed = parseScene(readFileSync(new URL(`../../../scenes/${name}`, import.meta.url), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.scene;
}

const pageOf = (scene: Scene): Promise<ClubPage> => gatherPage(scene, { show, loads: false }, createInProcessHost());

/** Whether tags open and close in order: a check of HTML written as these pages are, with an end tag for all but void elements. */
function tagsMatch(html: string): boolean {
  const body = html.replace(/<!doctype html>/, '').replace(/<(style|script)[^>]*>[\s\S]*?<\/\1>/g, '');
  const open: string[] = [];
  for (const [, end, name] of body.matchAll(/<(\/?)([a-z][a-z0-9]*)(?:\s[a-zA-Z-]+="[^"<>]*")*>/g)) {
    if (['meta', 'br'].includes(name)) continue;
    if (end === '') open.push(name);
    else if (open.pop() !== name) return false;
  }
  // Every sign that could begin a tag was one of these.
  return open.length === 0 && !/[<>]/.test(body.replace(/<\/?[a-z][a-z0-9]*(?:\s[a-zA-Z-]+="[^"<>]*")*>/g, ''));
}

describe('the page to pass on', () => {
  let scene: Scene;
  let page: ClubPage;
  let html: string;
  beforeAll(async () => {
    scene = sceneAt('01-wren-gill.json');
    page = await pageOf(scene);
    html = clubPageHtml(page, '1 May 2027');
  });

  it('is one file that asks for nothing and runs nothing', () => {
    expect(tagsMatch(html)).toBe(true);
    expect(html).toContain('default-src &#39;none&#39;');
    expect(html).not.toMatch(/(?:src|href|action|data)\s*=|url\(|@import|https?:\/\/(?!www\.w3\.org)/);
    // The one script element is data.
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html).toContain('<script type="application/json"');
  });

  it('says the verdict, every working and every number that is on the drawings', () => {
    expect(html).toContain('Of 4 ways of working, 2 fail, 2 may fail by how the parts are made, none passes.');
    expect(html).toContain('1 May 2027');
    for (const { name } of page.trials) expect(html).toContain(name);
    for (const { number, headline } of page.marks) {
      expect(html).toContain(headline);
      // Once in the list, once on the plan, once in the section.
      expect(html.split(`>${number}</`).length - 1).toBeGreaterThanOrEqual(3);
    }
  });

  it('has a sheet to fill in at the track with the runs that come to every place', () => {
    const sheet = html.slice(html.indexOf('To be tried at the track'));
    const rows = [...sheet.slice(0, sheet.indexOf('</table>')).matchAll(/<tr><th>([^<]+)<\/th><td>([\d, ]+)<\/td>/g)];
    const shown = rows.flatMap(([, , numbers]) => numbers.split(', ').map(Number));
    expect(shown.sort((a, b) => a - b)).toEqual(page.marks.map(({ number }) => number));
    expect(page.trials.map(({ name }) => name)).toEqual(expect.arrayContaining(rows.map(([, name]) => name)));
  });

  it('gives the railway back as it was', () => {
    const text = sceneInPage(html);
    expect(text).not.toBeNull();
    expect(parseScene(text)).toEqual({ ok: true, scene });
    expect(parseScene(html)).toEqual({ ok: true, scene });
    expect(sceneInPage(JSON.stringify({ html }))).toBeNull();
  });

  it('shows hostile names as what they are: text', async () => {
    const name = `</script><script>alert(1)</script> "Fold" & 'Co' \u202eeman`;
    const hostile: Scene = { ...scene, name, shows: '<img src=x onerror=alert(1)>' };
    const written = clubPageHtml({ ...page, scene: hostile }, '<b>now</b>');
    expect(tagsMatch(written)).toBe(true);
    expect(written.match(/<script/g)).toHaveLength(1);
    expect(written).toContain(
      '&lt;/script&gt;&lt;script&gt;alert(1)&lt;/script&gt; &quot;Fold&quot; &amp; &#39;Co&#39; eman',
    );
    expect(written).not.toContain('<img');
    expect(written).not.toContain('<b>now');
    expect(parseScene(written)).toMatchObject({ ok: true, scene: { name } });
  });

  it('says that it is not whole when the work was stopped', () => {
    expect(html).not.toContain('Not whole');
    expect(clubPageHtml({ ...page, whole: false }, 'today')).toContain('Not whole');
  });
});
