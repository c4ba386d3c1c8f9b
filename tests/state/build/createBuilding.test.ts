import { expect, it } from 'vitest';
import { compileScene } from '../../../src/sim/index.ts';
import { createBuilding, planToBuild } from '../../../src/state/build/index.ts';
import { bundledScene } from '../../scene/sample.ts';

it('a plan follows the wishes, whichever way round the sheet is said, and says in words what cannot be cut', () => {
  const compiled = compileScene(bundledScene('01-wren-gill.json'));
  const { building, actions } = createBuilding();
  const planned = () => planToBuild(compiled, building.getState());
  const usual = planned();
  if (typeof usual === 'string') throw new Error(usual);
  actions.setSheet({ length: 1.22, width: 2.44 });
  const turned = planned();
  if (typeof turned === 'string') throw new Error(turned);
  expect(turned.layout).toEqual(usual.layout);
  expect(building.getState().sheet.kerf).toBe(0.003);
  actions.setSheet({ width: 0.06 });
  expect(planned()).toMatch(/strip 70 mm wide does not come out/);
  // The scene gives this track its supports, so that the spacing changes nothing.
  actions.setSheet({ width: 2.44 });
  actions.set({ every: 0.5 });
  expect(planned()).toEqual(turned);
});
