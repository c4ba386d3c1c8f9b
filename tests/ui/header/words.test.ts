import { describe, expect, it } from 'vitest';
import type { SessionState } from '../../../src/state/types.ts';
import { savedWords } from '../../../src/ui/header/savedWords.ts';
import { stateWords } from '../../../src/ui/header/stateWords.ts';

const second = 1000;

describe('how long ago it was saved', () => {
  it.each([
    [1 * second, 'saved on this machine'],
    [12 * second, 'saved on this machine, 10 s ago'],
    [59 * second, 'saved on this machine, 55 s ago'],
    [61 * second, 'saved on this machine, 1 min ago'],
    [59 * 60 * second, 'saved on this machine, 59 min ago'],
  ])('%d ms', (age, words) => {
    expect(savedWords(1_000_000, 1_000_000 + age)).toBe(words);
  });

  it('does not speak of the future when the clock was put back', () => {
    expect(savedWords(1_000_000, 900_000)).toBe('saved on this machine');
  });
});

/** As much of a session as the words look at. */
function stateOf(over: Partial<SessionState>): SessionState {
  const scene = { name: 'A' } as SessionState['scene'];
  const settled = {
    scene,
    compiled: { scene } as SessionState['compiled'],
    trial: { id: 'a' } as SessionState['trial'],
    trialId: 'a',
    result: {} as SessionState['result'],
    progress: null,
    opened: { from: 'program', name: 'A' },
    cures: new Map(),
  } satisfies Partial<SessionState>;
  return { ...settled, ...over } as SessionState;
}

describe('what is going on', () => {
  it('is nothing before a scene is open', () => {
    expect(stateWords(stateOf({ scene: null }))).toBe('');
  });

  it('is the run while there is one', () => {
    expect(stateWords(stateOf({ progress: 0.42 }))).toBe('solving the trial, 42\u2009%');
  });

  it('is that the last change was not run', () => {
    expect(stateWords(stateOf({ scene: { name: 'A' } as SessionState['scene'] }))).toMatch(/^not run/);
    expect(stateWords(stateOf({ trialId: 'b' }))).toMatch(/^not run/);
  });

  it('counts the cures while they are worked out', () => {
    const outcome = { cure: { kind: 'change-working' }, margin: null, result: null, progress: 0 } as const;
    const cures = new Map([
      [
        0,
        [
          { ...outcome, state: 'done' },
          { ...outcome, state: 'running' },
          { ...outcome, state: 'waiting' },
        ],
      ],
    ]) as SessionState['cures'];
    expect(stateWords(stateOf({ cures }))).toBe('trying cures, 2 of 3');
  });

  it('is where the scene came from when all is done', () => {
    expect(stateWords(stateOf({}))).toBe('an example, as it came');
    expect(stateWords(stateOf({ opened: { from: 'file', name: 'loft.json' } }))).toBe('opened from loft.json');
  });
});
