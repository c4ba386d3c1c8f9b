import { describe, expect, it } from 'vitest';
import { compileScene, compileTrial } from '../../../src/sim/index.ts';
import { layOutStrip } from '../../../src/ui/panel/trial/stripLayout.ts';
import { sceneForTests } from '../../state/fakeHost.ts';

const scene = sceneForTests();
const { vehicles } = compileTrial(compileScene(scene), scene.trials[0].id).train;
const room = { width: 146, tallest: 15 };

describe('the train strip', () => {
  it('fills its width with the vehicles in order, bodies apart, lengths to one scale', () => {
    const boxes = layOutStrip(vehicles, { ...room, mirrored: false });
    expect(boxes).toHaveLength(vehicles.length);
    expect(boxes[0].from).toBeCloseTo(0, 9);
    expect(boxes.at(-1)?.to).toBeCloseTo(room.width, 9);
    const scale = (boxes[0].to - boxes[0].from) / vehicles[0].bodyLength;
    boxes.forEach((box, index) => {
      expect((box.to - box.from) / vehicles[index].bodyLength).toBeCloseTo(scale, 9);
      if (index > 0) expect(box.from).toBeGreaterThan(boxes[index - 1].to);
    });
    expect(Math.max(...boxes.map((box) => box.tall))).toBeCloseTo(room.tallest, 9);
  });

  it('is the same the other way round when the train goes the other way', () => {
    const boxes = layOutStrip(vehicles, { ...room, mirrored: false });
    const mirrored = layOutStrip(vehicles, { ...room, mirrored: true });
    mirrored.forEach((box, index) => {
      expect(box.from).toBeCloseTo(room.width - boxes[index].to, 9);
      expect(box.tall).toBe(boxes[index].tall);
    });
  });
});
