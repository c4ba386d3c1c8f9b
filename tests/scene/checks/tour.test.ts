import { describe, expect, it } from 'vitest';
import { parseScene, serialiseScene } from '../../../src/scene/index.ts';
import { sampleScene, sampleWith } from '../sample.ts';

const stop = { id: 'whole', title: 'The railway', view: { kind: 'whole' } } as const;

function refusal(tour: unknown): { path: string; found: string; allowed: string; example: string } {
  const parsed = parseScene(sampleWith('tour', tour));
  if (parsed.ok) throw new Error('accepted');
  expect(parsed.problems).toHaveLength(1);
  return parsed.problems[0];
}

describe('a tour in a scene file', () => {
  it('is what the file says, and the file gives it back', () => {
    const tour = [
      stop,
      { ...stop, id: 'down', view: { kind: 'down' }, atS: 4 },
      { ...stop, id: 'eye', view: { kind: 'eye' }, trial: 'up' },
      { ...stop, id: 'ride', view: { kind: 'ride', joint: 2 }, atS: 4, tillS: 9.5 },
      { ...stop, id: 'follow', view: { kind: 'follow', joint: 1, fromDeg: -40, aboveDeg: 20, pictureMm: 500 } },
      {
        ...stop,
        id: 'lens',
        words: 'Look <b>closely</b>.',
        view: { kind: 'lens', joint: 2, from: 'along' },
        risk: 'override',
      },
      {
        ...stop,
        id: 'place',
        view: {
          kind: 'place',
          eye: { xMm: 0, yMm: -900, heightMm: 700 },
          target: { xMm: 0, yMm: 0, heightMm: 0 },
          fieldDeg: 30,
        },
      },
    ];
    const parsed = parseScene(sampleWith('tour', tour));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    expect(parsed.scene.tour).toEqual(tour);
    expect(parseScene(serialiseScene(parsed.scene))).toEqual(parsed);
  });

  it('is left out by files from before there were tours', () => {
    expect(sampleScene()).not.toHaveProperty('tour');
  });

  it.each([
    ['a trial that is not there', { ...stop, trial: 'mail' }, 'tour[0].trial', 'one of "up"'],
    ['an end before the beginning', { ...stop, atS: 9, tillS: 4 }, 'tour[0].tillS', 'a moment after 9 s'],
    ['a stretch of no length', { ...stop, tillS: 0 }, 'tour[0].tillS', 'a moment after 0 s'],
    ['no title', { ...stop, title: '' }, 'tour[0].title', 'text of 1 to'],
    ['a view of no known kind', { ...stop, view: { kind: 'moon' } }, 'tour[0].view.kind', 'one of "whole"'],
    [
      'a place half said',
      { ...stop, view: { kind: 'place', eye: { xMm: 1, yMm: 1, heightMm: 1 } } },
      'tour[0].view.target',
      'an object with xMm',
    ],
    [
      'a joint of no train',
      { ...stop, view: { kind: 'lens', joint: 0 } },
      'tour[0].view.joint',
      'a whole number from 1',
    ],
    ['more words than fit a wall', { ...stop, words: 'x'.repeat(401) }, 'tour[0].words', 'text of 1 to 400'],
    ['a check that is not known', { ...stop, risk: 'boredom' }, 'tour[0].risk', 'one of "stall"'],
    ['a field misspelt', { ...stop, titel: 'The railway' }, 'tour[0].titel', 'only id, title'],
  ])('is refused with %s', (_, one, path, allowed) => {
    const problem = refusal([one]);
    expect(problem.path).toBe(path);
    expect(problem.allowed).toContain(allowed);
  });

  it('is refused where two stops have one name', () => {
    expect(refusal([stop, stop])).toMatchObject({ path: 'tour[1].id', found: '"whole" a second time' });
  });

  it('is refused where it has more stops than can be sat through', () => {
    const many = Array.from({ length: 61 }, (_, index) => ({ ...stop, id: `stop-${index}` }));
    expect(refusal(many)).toMatchObject({ path: 'tour', allowed: expect.stringContaining('0 to 60') });
  });
});
