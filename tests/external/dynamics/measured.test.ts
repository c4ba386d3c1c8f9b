import { describe, expect, it } from 'vitest';
import { run } from '../../../src/core/dynamics/index.ts';
import { at, engine, level, trial, wagon } from '../../core/dynamics/trains.ts';

const g = 9.80665;
const gramForce = g / 1000;

describe('measurements by modellers', () => {
  it('ten HO cars of 113 g that drag 2.5 gf each take 25 gf behind the engine', () => {
    // Dynamometer car, HO: 2.5 g per car, 25 g for ten, level track (trainboard.com thread 158542); 2.5/113 = 2.2 %.
    const car = wagon(0.113, {}, { rolling: { coulomb: 2.5 / 113, perSpeed: 0, breakaway: 1 } });
    const result = run(
      trial(level(8), [engine(0.5), ...new Array(10).fill(car)], [at(0.1, 0.4, 1)], { script: { timeLimit: 16 } }),
    );
    const last = (result.frames - 1) * 10;
    expect(result.force[last]! / gramForce).toBeCloseTo(25, 3);
    expect(result.force[last + 9]! / gramForce).toBeCloseTo(2.5, 3);
  });

  it.each([
    ['good', 0.008],
    ['tuned', 0.015],
    ['worst', 0.022],
  ])('a %s HO car starts to roll at its roll-off slope and not below it', (_name, slope) => {
    // Roll-off slopes 0.8 % good, 1.5 to 2 % after tuning, 2.2 % worst (cs.trains.com thread 210709).
    const car = wagon(0.1, {}, { rolling: { coulomb: slope, perSpeed: 0, breakaway: 1 } });
    const moves = (grade: number) =>
      run(trial(level(6, grade), [car], [], { script: { start: 3, timeLimit: 2 } })).speed.some((v) => v !== 0);
    expect(moves(0.99 * slope)).toBe(false);
    expect(moves(1.01 * slope)).toBe(true);
  });

  describe.each([
    // Tilting plane, locomotive with locked wheels holding the rest of its train (tinplate.open-terrain.org, "Lokzugkraft -
    // Die Zweite"): masses of engine and of what rolls free, angle at which it slides, what that comes to, gf. The page prints coefficients for two of
    // them; the third is 124/420.
    ['0 gauge on tin track', 0.95, 0.895, 6, 193, 0.205],
    ['0 gauge on tin track, second engine', 0.73, 0.71, 6, 151, 0.208],
    ['H0', 0.42, 0.23, 11, 124, 0.295],
  ])('%s', (_name, engineMass, rest, angle, pull, adhesion) => {
    const free = { rolling: { coulomb: 0, perSpeed: 0, breakaway: 1 } };
    const tilted = (degrees: number, grip: number) => {
      const locked = engine(engineMass, { adhesion: grip, slidingAdhesion: grip, worm: true }, { damping: 20 }, free);
      const track = level(6, Math.tan((degrees * Math.PI) / 180));
      return run(
        trial(track, [locked, wagon(rest, { damping: 20 }, free)], [], { script: { start: 4, timeLimit: 1 } }),
      );
    };

    it('slides at the angle measured', () => {
      const slides = (degrees: number) => {
        const { speed, frames } = tilted(degrees, adhesion);
        return Math.abs(speed[(frames - 1) * 2]!) > 0.005;
      };
      // Half a degree is how finely the angle was read.
      expect(slides(angle - 0.5)).toBe(false);
      expect(slides(angle + 0.5)).toBe(true);
    });

    it('holds the pull printed at that angle, as long as it grips', () => {
      const { railForce, frames } = tilted(angle, 1);
      expect(Math.abs(railForce[frames - 1]! / gramForce - pull)).toBeLessThan(0.5);
    });

    it('pulls that much on the level as its wheels slip', () => {
      // Something that cannot be moved behind it, and the motor turned up until the wheels spin.
      const stuck = wagon(5, { damping: 20 }, { rolling: { coulomb: 1, perSpeed: 0, breakaway: 1 } });
      const grip = pull / (1000 * engineMass);
      const pulling = engine(
        engineMass,
        { adhesion: grip, slidingAdhesion: grip, stallForce: 4 },
        { damping: 20 },
        free,
      );
      const result = run(
        trial(level(4), [pulling, stuck], [at(0, 1, 5)], { script: { timeLimit: 6 }, options: { stallPatience: 10 } }),
      );
      const last = result.frames - 1;
      expect(result.rimSpeed[last]).toBeGreaterThan(0.05);
      expect(Math.abs(result.force[last]! / gramForce - pull)).toBeLessThan(0.05);
    });
  });
});
