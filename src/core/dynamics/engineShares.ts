import type { Drive } from '../stock/types.ts';
import { motorForce, settingSpeed } from './rotor.ts';

/**
 * How engines of one train share a demand when all run at one speed.
 *
 * Each gives what its motor's line leaves at that speed, F_stall·(u - v/v_free); the speed is the one at which they give together what is
 * asked. A faster engine pulls more and may push a slower one beyond its setting: a motor without a worm then brakes by its line, but
 * a worm lets nothing through, so the train goes no faster than the slowest worm's setting and that engine takes up the rest
 * from the others (it is dragged, and they pull against it).
 *
 * @param settings by engine, 0..1
 * @param asked force the train asks in all, N
 * @param pulls what each engine gives, N, overwritten; they add up to `asked` unless the motors cannot give it
 * @returns the common speed, m/s; 0 where the motors give no more than is asked
 */
export function shareDemand(
  drives: readonly Drive[],
  settings: ArrayLike<number>,
  asked: number,
  pulls: Float64Array,
): number {
  let most = 0;
  let line = 0;
  let slowest = -1;
  let cap = Number.POSITIVE_INFINITY;
  drives.forEach((drive, e) => {
    most += drive.stallForce * settings[e]!;
    line += drive.stallForce / drive.freeSpeed;
    const own = settingSpeed(drive, settings[e]!);
    if (!drive.worm || own >= cap) return;
    cap = own;
    slowest = e;
  });
  const balanced = line > 0 ? (most - asked) / line : 0;
  const held = balanced > cap;
  const speed = Math.max(held ? cap : balanced, 0);
  let rest = asked;
  drives.forEach((drive, e) => {
    // Standing, each bears its share of the demand by what its motor gives.
    pulls[e] =
      speed > 0
        ? motorForce(drive, settings[e]!, speed)
        : most > 0
          ? (asked * drive.stallForce * settings[e]!) / most
          : asked / drives.length;
    rest -= pulls[e]!;
  });
  if (held && speed > 0) pulls[slowest] = pulls[slowest]! + rest;
  return speed;
}

/**
 * Setting (0..1, the same for all engines) at which they hold a speed against a demand, at most `most`: where motors must pull, from their
 * lines; where the train pushes, the least setting at which every worm lets it run that fast.
 */
export function holdingSetting(drives: readonly Drive[], speed: number, asked: number, most: number): number {
  let stall = 0;
  let line = 0;
  let least = 0;
  for (const drive of drives) {
    stall += drive.stallForce;
    line += drive.stallForce / drive.freeSpeed;
    if (drive.worm) least = Math.max(least, speed / drive.freeSpeed);
  }
  return Math.min(Math.max((asked + line * speed) / stall, least, 0), most);
}
