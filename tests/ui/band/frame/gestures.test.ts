import { describe, expect, test } from 'vitest';
import { type AxisScale, valueAt } from '../../../../src/ui/band/frame/axis.ts';
import { Gestures, wheelSpan } from '../../../../src/ui/band/frame/gestures.ts';

const full = { from: 0, to: 10 };
const axis: AxisScale = { kind: 'chainage', span: full, width: 1000 };

describe('hands on the axis', () => {
  test('one finger scrubs from press to release', () => {
    const hand = new Gestures();
    expect(hand.down(1, 100, axis, false)).toEqual({ kind: 'scrub', x: 100 });
    expect(hand.move(1, 130, axis, full)).toEqual({ kind: 'scrub', x: 130 });
    expect(hand.up(1, axis, full)).toBeNull();
    expect(hand.busy).toBe(false);
    expect(hand.move(1, 140, axis, full)).toBeNull();
  });

  test('with Shift a range is marked, and shown when let go', () => {
    const hand = new Gestures();
    hand.down(1, 600, axis, true);
    expect(hand.move(1, 300, axis, full)).toEqual({ kind: 'brush', from: 600, to: 300 });
    expect(hand.up(1, axis, full)).toEqual({ kind: 'span', span: { from: 3, to: 6 } });
  });

  test('a slip of the hand with Shift marks nothing', () => {
    const hand = new Gestures();
    hand.down(1, 600, axis, true);
    hand.move(1, 602, axis, full);
    expect(hand.up(1, axis, full)).toBeNull();
  });

  test('two fingers hold the places they were put on', () => {
    const hand = new Gestures();
    hand.down(1, 400, axis, false);
    expect(hand.down(2, 600, axis, false)).toBeNull();
    hand.move(1, 200, axis, full);
    const wish = hand.move(2, 700, axis, full);
    expect(wish?.kind).toBe('span');
    if (wish?.kind !== 'span') return;
    const seen: AxisScale = { ...axis, span: wish.span };
    expect(valueAt(seen, 200)).toBeCloseTo(4, 6);
    expect(valueAt(seen, 700)).toBeCloseTo(6, 6);
    // Lifting one finger does not let the playhead jump to the other.
    hand.up(2, axis, full);
    expect(hand.move(1, 210, axis, full)).toBeNull();
    hand.up(1, axis, full);
    expect(hand.busy).toBe(false);
  });
});

describe('the wheel', () => {
  test('forwards looks closer about the pointer, back looks at more', () => {
    const closer = wheelSpan({ deltaX: 0, deltaY: -100, shift: false }, 250, axis, full);
    expect(closer.to - closer.from).toBeCloseTo(10 * Math.exp(-0.4), 9);
    expect((2.5 - closer.from) / (closer.to - closer.from)).toBeCloseTo(0.25, 9);
    expect(wheelSpan({ deltaX: 0, deltaY: 100, shift: false }, 250, { ...axis, span: closer }, full).to).toBeCloseTo(
      10,
      9,
    );
  });

  test('sideways, or with Shift, goes along', () => {
    const near: AxisScale = { ...axis, span: { from: 2, to: 4 } };
    expect(wheelSpan({ deltaX: 100, deltaY: 5, shift: false }, 0, near, full)).toEqual({ from: 2.2, to: 4.2 });
    expect(wheelSpan({ deltaX: 0, deltaY: -100, shift: true }, 0, near, full)).toEqual({ from: 1.8, to: 3.8 });
  });
});
