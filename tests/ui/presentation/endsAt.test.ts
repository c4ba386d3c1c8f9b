import { expect, it } from 'vitest';
import { endsAt } from '../../../src/ui/presentation/endsAt.ts';

/** Two vehicles 0.3 m apart: from 1 m they go on by 0.4 m in the first second, by 0.2 m in the next two. */
const run = {
  time: Float64Array.of(0, 1, 3),
  vehicles: 2,
  chainage: Float64Array.of(1, 0.7, 1.4, 1.1, 1.6, 1.3),
};

it('says where both ends of a train are, between its frames and beyond them', () => {
  const near = (now: number, [tail, head]: readonly [number, number]) => {
    expect(endsAt(run, now)[0]).toBeCloseTo(tail, 12);
    expect(endsAt(run, now)[1]).toBeCloseTo(head, 12);
  };
  near(-1, [0.7, 1]);
  near(0.5, [0.9, 1.2]);
  near(2, [1.2, 1.5]);
  near(9, [1.3, 1.6]);
});
