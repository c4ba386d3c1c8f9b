import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/core/math/vec3.ts';
import { eyeOf, type Look } from '../../../src/stage/camera/look.ts';
import { StageSights } from '../../../src/stage/view/stageSights.ts';
import type { StageWorld } from '../../../src/stage/view/stageWorld.ts';
import { createSession } from '../../../src/state/index.ts';

const [width, height] = [880, 370];
const corners: readonly Vec3[] = [
  [0, 0, 0],
  [4, 0, 0],
  [4, 1.5, 0],
  [0, 1.5, 0],
];

/** How far above the foot of the picture the lowest of the corners is seen, px: by the drawing library's own camera. */
function lowest(look: Look): number {
  const camera = new PerspectiveCamera((look.field * 180) / Math.PI, width / height, 0.01, 500);
  camera.up.set(0, 1, 0);
  camera.position.set(...eyeOf(look));
  camera.lookAt(...look.target);
  camera.updateMatrixWorld();
  camera.updateProjectionMatrix();
  const up = corners.map((corner) => new Vector3(...corner).project(camera).y);
  return ((Math.min(...up) + 1) / 2) * height;
}

describe('what there is to look at', () => {
  it.each([35, 60, 104])('is framed clear of bars %d px high', (bars) => {
    const { session } = createSession({ solve: () => ({ result: new Promise(() => {}), cancel() {} }) } as never);
    const sights = new StageSights({} as StageWorld, session.getState);
    sights.outline = corners;
    sights.size = [width, height];
    sights.bars = bars;
    expect(lowest(sights.down())).toBeGreaterThanOrEqual(bars);
    // No more air than there is on top of them: the railway is shown as large as it goes.
    expect(lowest(sights.down())).toBeLessThan(bars + 20);
  });
});
