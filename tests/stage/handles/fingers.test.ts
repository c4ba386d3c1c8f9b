import { expect, it } from 'vitest';
import { Fingers } from '../../../src/stage/handles/fingers.ts';

const finger = (pointerId: number, pointerType = 'touch') => ({ pointerId, pointerType }) as PointerEvent;

/** Fingers on a stage whose camera notes who joins it. */
function fingers() {
  const joined: number[] = [];
  let given = 0;
  const all = new Fingers({ busy: () => joined.length > 0, join: ({ pointerId }) => joined.push(pointerId) });
  all.onSecond = () => given++;
  return { all, joined, given: () => given };
}

it('one finger may hold a handle; a second one gives both to the camera and what was held back', () => {
  const { all, joined, given } = fingers();
  expect(all.takesOver(finger(1))).toBe(false);
  all.first = finger(1);
  expect(all.takesOver(finger(2))).toBe(true);
  expect(joined).toEqual([1, 2]);
  expect(given()).toBe(1);
  expect(all.first).toBeNull();
});

it('a finger on a handle while another turns the picture turns it too', () => {
  const { all, joined, given } = fingers();
  joined.push(1);
  expect(all.takesOver(finger(2))).toBe(true);
  expect(joined).toEqual([1, 2]);
  expect(given()).toBe(0);
});

it('a mouse is never one of them', () => {
  const { all } = fingers();
  all.first = finger(1);
  expect(all.takesOver(finger(2, 'mouse'))).toBe(false);
});
