import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitNames } from '../../../../src/ui/band/carpet/fitNames.ts';

/** Ten px a letter. */
const measure = (text: string) => 10 * text.length;
const shortened = (leading: string, trailing: string, room: number) => fitNames([leading, trailing], room, '', measure);

describe('names of a joint in little room', () => {
  test('stay whole where they fit', () => {
    expect(shortened('Brake van', 'Open wagon', 200)).toEqual(['Brake van', 'Open wagon']);
  });

  test('lose words of the longer one from the front, so that the noun stays', () => {
    expect(shortened('Open wagon', 'Six-coupled tank engine', 250)).toEqual(['Open wagon', 'tank engine']);
    expect(shortened('Open wagon', 'Six-coupled tank engine', 180)).toEqual(['Open wagon', 'engine']);
    expect(shortened('Open wagon', 'Six-coupled tank engine', 130)).toEqual(['wagon', 'engine']);
    expect(shortened('Open wagon', 'Six-coupled tank engine', 60)).toBeNull();
  });

  test('never leave a bare number', () => {
    expect(shortened('Coach 3', 'Coach 4', 100)).toBeNull();
  });

  test('what is given fits', () => {
    const name = fc.array(fc.constantFrom('Long', 'open', 'bogie', 'van', 'wagon', '7'), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(name, name, fc.integer({ min: 10, max: 400 }), (a, b, room) => {
        const fitted = shortened(a.join(' '), b.join(' '), room);
        if (fitted) expect(measure(fitted.join('–'))).toBeLessThanOrEqual(room);
      }),
    );
  });
});
