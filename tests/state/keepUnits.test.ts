import { describe, expect, it } from 'vitest';
import { createSession, keepUnits, usualUnits } from '../../src/state/index.ts';
import { heldHost } from './fakeHost.ts';

describe('the units lengths and grades are shown in', () => {
  // Common practice, no source: America builds in inches and says per cent, Britain says 1 in n, the Continent per cent.
  it.each([
    ['en-US', 'in', 'percent'],
    ['es-US', 'in', 'percent'],
    ['en-GB', 'mm', 'one-in'],
    ['en-AU', 'mm', 'one-in'],
    ['en-CA', 'mm', 'percent'],
    ['de-DE', 'mm', 'percent'],
    ['en', 'mm', 'one-in'],
    ['fr', 'mm', 'percent'],
    ['', 'mm', 'one-in'],
    ['no tag at all', 'mm', 'one-in'],
  ])('for %s are %s and %s', (tag, lengthUnit, gradeForm) => {
    expect(usualUnits(tag)).toEqual({ lengthUnit, gradeForm });
  });

  const box = (text: string | null) => ({
    text,
    read() {
      return this.text;
    },
    write(now: string | null) {
      this.text = now;
    },
  });

  it('are those of the place at a first visit, and nothing is kept until something is chosen', () => {
    const { session, actions } = createSession(heldHost().host);
    const kept = box(null);
    keepUnits(session, kept, 'en-US');
    expect(session.getState()).toMatchObject({ lengthUnit: 'in', gradeForm: 'percent' });
    expect(kept.text).toBeNull();
    actions.setChapter('route');
    expect(kept.text).toBeNull();
    actions.setGradeForm('one-in');
    expect(kept.text).toBe('in one-in');
  });

  it('are what was chosen at a later one, wherever that is', () => {
    const { session } = createSession(heldHost().host);
    keepUnits(session, box('mm percent'), 'en-US');
    expect(session.getState()).toMatchObject({ lengthUnit: 'mm', gradeForm: 'percent' });
  });

  it.each(['', 'mm', 'ell one-in', 'in degrees'])('are the usual ones when what was kept reads “%s”', (text) => {
    const { session } = createSession(heldHost().host);
    keepUnits(session, box(text), 'en-GB');
    expect(session.getState()).toMatchObject({ lengthUnit: 'mm', gradeForm: 'one-in' });
  });
});
