import { describe, expect, it } from 'vitest';
import { nodesOf, profileProblem } from '../../../../src/core/study/profile/index.ts';
import { intervalAt, turnedTo } from '../../../../src/core/study/profile/nodes.ts';
import { arc, straight, transition } from '../../../../src/core/track/index.ts';
import { taskOn, trackOn } from './samples.ts';

/** To the left to 1/(0.5 m), over to the right to 1/(1/3 m), and out: one change of sides within an element, 2/3 of the way along it. */
const wavy = trackOn([
  straight(1),
  transition(0.5, 0, 2),
  transition(0.6, 2, -1),
  transition(0.4, -1, -3),
  transition(0.5, -3, 0),
]);

const expectClose = (found: ArrayLike<number>, wanted: readonly number[]) => {
  expect(found.length).toBe(wanted.length);
  wanted.forEach((value, k) => {
    expect(found[k]).toBeCloseTo(value, 9);
  });
};

describe('nodes of a profile', () => {
  it('are the ends of elements and where the curvature changes sides, with what is turned up to each by areas of triangles', () => {
    const { at, before, after, turned } = nodesOf(taskOn(wavy));
    expectClose(at, [0, 1, 1.5, 1.9, 2.1, 2.5, 3]);
    // ½·0.5·2, ½·0.4·2, ½·0.2·1, 0.4·2, ½·0.5·3.
    expectClose(turned, [0, 0, 0.5, 0.9, 1, 1.8, 2.55]);
    expectClose(before, [0, 0, 2, 0, 1, 3, 0]);
    expectClose(after, [0, 0, 2, 0, 1, 3, 0]);
  });

  it('tell what is turned up to any place', () => {
    const nodes = nodesOf(taskOn(wavy));
    // Half the first transition is a quarter of its turn; 50 mm on, curvature 1.0 to 1.2; of the third 0.2 m with 1 to 2.
    expectClose(
      [0.5, 1.25, 1.3, 2, 2.3, 2.75, 3].map((s) => turnedTo(nodes, s)),
      [0, 0.125, 0.18, 0.925, 1.3, 1.8 + 0.25 * 2.25, 2.55],
    );
  });

  it('keep the curvature of either side apart where it jumps, and of the ends', () => {
    const { at, before, after, turned } = nodesOf(taskOn(trackOn([arc(0.5, 0.4), arc(0.4, -0.5), straight(0.3)])));
    expectClose(at, [0, 0.2, 0.4, 0.7]);
    expectClose(before, [2, 2, 2.5, 0]);
    expectClose(after, [2, 2.5, 0, 0]);
    expectClose(turned, [0, 0.4, 0.9, 0.9]);
  });

  it('divide what is longer than asked evenly, and what is just as long not', () => {
    const track = trackOn([straight(1)]);
    expectClose(nodesOf(taskOn(track, { every: 0.25 })).at, [0, 0.25, 0.5, 0.75, 1]);
    expectClose(nodesOf(taskOn(track, { every: 0.24 })).at, [0, 0.2, 0.4, 0.6, 0.8, 1]);
    const met = { heights: [{ chainage: 0.6, height: 0 }], grades: [{ chainage: 0.3, grade: 0 }], every: 0.35 };
    expectClose(nodesOf(taskOn(track, met)).at, [0, 0.3, 0.6, 0.8, 1]);
  });

  it('hold a place in the interval it lies in, those beyond the ends in the first and the last', () => {
    const nodes = nodesOf(taskOn(trackOn([straight(1)]), { every: 0.25 }));
    expect([-1, 0, 0.2, 0.25, 0.3, 0.75, 1, 2].map((s) => intervalAt(nodes, s))).toEqual([0, 0, 0, 1, 1, 3, 3, 3]);
  });

  it('are one where they lie within a micrometre: a grade asked for there is asked for at that node', () => {
    const task = taskOn(trackOn([straight(0.5), straight(0.5)]), { grades: [{ chainage: 0.5 + 4e-7, grade: 0.02 }] });
    const nodes = nodesOf(task);
    expectClose(nodes.at, [0, 0.5, 1]);
    const { rows, variables } = profileProblem(task, nodes, []);
    const held = rows.filter(({ terms, most }) => terms.length === 1 && Math.abs(Math.abs(most) - 2) < 1e-9);
    expect(held.map(({ terms }) => variables[terms[0]![0]]?.name)).toEqual([variables[2]?.name, variables[2]?.name]);
  });
});
