import fc from 'fast-check';
import { expect, it } from 'vitest';
import { leastMargins, usualLooking } from '../../../src/core/risks/index.ts';
import type { Track } from '../../../src/core/track/types.ts';
import type { Scene } from '../../../src/scene/index.ts';
import { foulingPoints } from '../../../src/sim/advice/index.ts';
import { compileScene } from '../../../src/sim/compileScene.ts';
import { compileTrack } from '../../../src/sim/compileTrack.ts';
import { compileTrial } from '../../../src/sim/compileTrial.ts';
import { glanceAt } from '../../../src/sim/glance/index.ts';
import { riskContext } from '../../../src/sim/runTrial.ts';
import { steadyPass } from '../../../src/sim/study/measureTrial.ts';
import type { CompiledScene } from '../../../src/sim/types.ts';
import { anyDraw, edited } from '../../scene/edits/everyEdit.ts';
import { bundledFiles, bundledScene } from '../../scene/sample.ts';

const scenes = bundledFiles.map(bundledScene);

/** A scene with every track laid anew, so that nothing that is kept with a track is there. */
function laidAnew(scene: Scene): CompiledScene {
  const tracks = new Map<string, Track>();
  for (const track of scene.tracks) tracks.set(track.id, compileTrack(track, tracks));
  return { scene, tracks };
}

/** What a risk's least margin is and where, of a railway made ready from nothing; null where it cannot be run. */
function fromNothing(scene: Scene, trialId: string) {
  try {
    const trial = compileTrial(laidAnew(scene), trialId);
    const { reversed, track } = trial.path;
    return leastMargins(riskContext(trial, steadyPass(trial)), usualLooking).map(
      ({ risk, margin, subject, chainage }) => {
        return { risk, margin, subject, chainage: reversed ? track.length - chainage : chainage };
      },
    );
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

const byRisk = (a: { risk: string }, b: { risk: string }) => (a.risk < b.risk ? -1 : 1);

it('after any edits, seen one after the other through a worker, a glance and the fouling points are those of a railway laid anew, to the bit', () => {
  let unlike = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...scenes.keys()),
      fc.nat(),
      fc.array(anyDraw(), { minLength: 1, maxLength: 5 }),
      (which, nth, draws) => {
        let scene = scenes[which];
        const { id } = scene.trials[nth % scene.trials.length];
        for (const draw of draws) {
          scene = edited(scene, draw) ?? scene;
          if (!scene.trials.some((trial) => trial.id === id)) return;
          const glance = glanceAt({ scene: structuredClone(scene), trialId: id, thorough: false });
          const wanted = fromNothing(scene, id);
          expect(glance.ok).toBe(wanted !== null);
          if (!glance.ok || wanted === null) return;
          const told = glance.measure.risks.map(({ risk, margin, subject, chainage }) => {
            return { risk, margin, subject, chainage };
          });
          expect(told.sort(byRisk)).toEqual(wanted.sort(byRisk));
          if (scene !== scenes[which]) unlike++;
          expect(foulingPoints(compileScene(scene))).toEqual(foulingPoints(laidAnew(scene)));
        }
      },
    ),
    { numRuns: 25 },
  );
  expect(unlike).toBeGreaterThan(10);
});

it('tracks that an edit leaves alone stay the very same, those it changes and their branches do not', () => {
  const scene = scenes.find(({ tracks }) => tracks.some(({ start }) => 'branchOf' in start))!;
  const branch = scene.tracks.find(({ start }) => 'branchOf' in start)!;
  const main = 'branchOf' in branch.start ? branch.start.branchOf : '';
  const before = compileScene(scene);
  const again = compileScene(structuredClone(scene));
  for (const [id, track] of before.tracks) expect(again.tracks.get(id)).toBe(track);
  const renamed = {
    ...scene,
    tracks: scene.tracks.map((track) => (track.id === main ? { ...track, name: `${track.name} anew` } : track)),
  } as Scene;
  const after = compileScene(renamed);
  expect(after.tracks.get(main)).not.toBe(before.tracks.get(main));
  expect(after.tracks.get(branch.id)).not.toBe(before.tracks.get(branch.id));
});
