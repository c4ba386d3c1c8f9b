import { changedPath } from '../../dynamics/index.ts';
import type { Path } from '../../dynamics/types.ts';
import { jointGeometry, newJointGeometry, newPlacement, placeVehicle } from '../../stock/index.ts';
import { makeTrack, type StripSpec, type Track } from '../../track/index.ts';
import { framePoser } from '../moments/framePoser.ts';
import type { RiskContext } from '../types.ts';
import { couplingHalves } from './headMismatch.ts';

/** What makes two heads differ in height, in the order a builder meets it. */
export type BudgetLabel =
  | 'planned-track'
  | 'built-track'
  | 'fitted-heads'
  | 'leading-head'
  | 'trailing-head'
  | 'supports';

/** One line of a budget, m: what it is known to add (signed as the total is), and what it may add or take besides. */
export interface BudgetLine {
  readonly label: BudgetLabel;
  readonly value: number;
  readonly tolerance: number;
}

/** Where the heights of two heads differ most on the way, what that is made of, and what is left of the hold. Lengths m. */
export interface ErrorBudget {
  readonly joint: number;
  /** Frame and path chainage of the greatest difference. */
  readonly frame: number;
  readonly chainage: number;
  readonly lines: readonly BudgetLine[];
  /** Difference as known: the lines' values together, not negative. */
  readonly mismatch: number;
  /** What all tolerances make of it when every one goes the wrong way, and when they are as likely to go either way (root of the sum of squares). */
  readonly worstCase: number;
  readonly likely: number;
  /** What holds the joint pulled and pushed; Infinity where heads cannot part or ride up. */
  readonly engagement: number;
  readonly facing: number;
}

export interface BudgetOptions {
  /** How far off every support may stand either way, independent of the others, m. */
  readonly supportTolerance: number;
}

/** 0.5 mm: what a builder sets with rule and spacer. Common practice, no source. */
export const defaultBudget: BudgetOptions = { supportTolerance: 0.0005 };

/**
 * The error budget of one joint at the frame of the run where its heads differ most in height: planned track, what it was built off by,
 * heads as fitted, and the tolerances of both heads and of the supports, each by what it makes of the difference there. Null for a
 * train of one vehicle. What a support adds is found by moving it alone, so stiff strips, long overhangs and unlike vehicles are in it.
 */
export function errorBudget(
  context: RiskContext,
  joint: number,
  options: BudgetOptions = defaultBudget,
): ErrorBudget | null {
  return errorBudgets(context, options)[joint] ?? null;
}

/** The budgets of all joints of a train, leading joint first. Throws RangeError where a vehicle does not fit the track. */
export function errorBudgets(context: RiskContext, options: BudgetOptions = defaultBudget): ErrorBudget[] {
  const { run, path } = context;
  const halves = couplingHalves(context);
  const pose = framePoser(context);
  const worstFrame = new Int32Array(halves.length);
  const most = new Float64Array(halves.length).fill(-1);
  for (let f = 0; f < run.frames; f++) {
    const { joints } = pose(f);
    for (let j = 0; j < halves.length; j++) {
      const apart = Math.abs(joints[j].verticalOffset);
      if (apart <= most[j]) continue;
      most[j] = apart;
      worstFrame[j] = f;
    }
  }
  const planned = plannedTrack(path);
  return halves.map(([leading, trailing], joint) => {
    const frame = worstFrame[joint];
    const offsetOn = offsetAt(context, frame, joint);
    const offset = offsetOn(path.track);
    const asPlanned = offsetOn(planned);
    const sign = Math.sign(offset || 1);
    const fitted = leading.headHeight - trailing.headHeight;
    const supports = supportTolerances(context, frame, joint, options.supportTolerance);
    const apart = [leading.headHeightTolerance, trailing.headHeightTolerance, ...supports];
    const mismatch = Math.abs(offset);
    return {
      joint,
      frame,
      chainage: pose(frame).joints[joint].chainage,
      lines: [
        { label: 'planned-track', value: sign * (asPlanned - fitted), tolerance: 0 },
        { label: 'built-track', value: sign * (offset - asPlanned), tolerance: 0 },
        { label: 'fitted-heads', value: sign * fitted, tolerance: 0 },
        { label: 'leading-head', value: 0, tolerance: leading.headHeightTolerance },
        { label: 'trailing-head', value: 0, tolerance: trailing.headHeightTolerance },
        { label: 'supports', value: 0, tolerance: sum(supports) },
      ],
      mismatch,
      worstCase: mismatch + sum(apart),
      likely: mismatch + Math.sqrt(sum(apart.map((one) => one * one))),
      engagement: Math.min(leading.engagement, trailing.engagement),
      facing: (leading.facingHeight + trailing.facingHeight) / 2,
    };
  });
}

const sum = (amounts: readonly number[]): number => amounts.reduce((total, one) => total + one, 0);

/** The same way with its strips as planned. */
function plannedTrack({ track, legs }: Path): Track {
  if (legs !== undefined) return { ...track, profile: track.plannedProfile };
  const { strip, ...profile } = track.spec.profile;
  return strip === undefined ? track : makeTrack({ ...track.spec, profile });
}

/** Looks up the difference in height of a joint's heads, leading less trailing, m, were the two vehicles at the same chainages of another track. */
function offsetAt({ run, train: { vehicles } }: RiskContext, frame: number, joint: number): (track: Track) => number {
  const leading = vehicles[joint];
  const trailing = vehicles[joint + 1];
  const row = frame * run.vehicles + joint;
  const ahead = newPlacement();
  const behind = newPlacement();
  const geometry = newJointGeometry();
  return (track) => {
    placeVehicle(track, leading, run.chainage[row], ahead);
    placeVehicle(track, trailing, run.chainage[row + 1], behind);
    return jointGeometry(leading, trailing, ahead, behind, geometry).verticalOffset;
  };
}

/** Supports this many further on than the last one under the two vehicles still move their heads: by a three hundredth, four spans of 0.27 each. */
const beyond = 4;

/** What each support near a joint adds to the difference of its heads when it alone is off by the tolerance, m. None where no track has a strip. */
function supportTolerances(context: RiskContext, frame: number, joint: number, tolerance: number): number[] {
  if (tolerance === 0) return [];
  const { run, train, path } = context;
  const row = frame * run.vehicles + joint;
  const leading = train.vehicles[joint];
  const trailing = train.vehicles[joint + 1];
  const from = run.chainage[row + 1] - trailing.pivotSpacing;
  const to = run.chainage[row] + leading.pivotSpacing;
  const offsetOn = offsetAt(context, frame, joint);
  const offset = offsetOn(path.track);
  const added = (moved: Track): number => Math.abs(offsetOn(moved) - offset);
  if (path.legs === undefined) return movedSupports(path.track, from, to, tolerance).map(added);
  return path.legs.flatMap(({ track, from: begin, to: end, start }) => {
    if (start > to || start + Math.abs(end - begin) < from) return [];
    const own = (chainage: number): number => begin + (end > begin ? chainage - start : start - chainage);
    const [low, high] = end > begin ? [own(from), own(to)] : [own(to), own(from)];
    return movedSupports(track, low, high, tolerance).map((moved) => {
      const changed = changedPath(path, track, moved);
      // A step of half a millimetre where a support bears the joint of two tracks is still a joint.
      return changed === null ? 0 : added(changed.track);
    });
  });
}

/** The track with each support about a stretch of it moved by the tolerance, one after the other. */
function movedSupports(track: Track, from: number, to: number, tolerance: number): Track[] {
  const { strip } = track.spec.profile;
  if (strip === undefined) return [];
  const first = strip.supports.findIndex(({ chainage }) => chainage >= from);
  // Supports come in the order of their chainage.
  const last = strip.supports.filter(({ chainage }) => chainage <= to).length - 1;
  const found: Track[] = [];
  const begin = (first < 0 ? strip.supports.length : first) - beyond;
  for (let k = Math.max(0, begin); k <= Math.min(strip.supports.length - 1, last + beyond); k++) {
    const profile = { ...track.spec.profile, strip: withSupportMoved(strip, k, tolerance) };
    found.push(makeTrack({ ...track.spec, profile }));
  }
  return found;
}

const withSupportMoved = (strip: StripSpec, support: number, by: number): StripSpec => ({
  ...strip,
  supports: strip.supports.map((one, k) => (k === support ? { ...one, departure: one.departure + by } : one)),
});
