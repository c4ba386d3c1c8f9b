import type { Vec3 } from '../../core/math/vec3.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { Track, TrackPoint } from '../../core/track/types.ts';
import { referenceOf, referenceVehicle } from '../../state/index.ts';
import { roomHandles } from '../../state/room/index.ts';
import { handlesOf } from '../../state/route/index.ts';
import type { SessionState } from '../../state/types.ts';
import { frameAll, type Insets } from '../camera/framing.ts';
import { eyeOf, type Look, lookBetween } from '../camera/look.ts';
import type { Sights } from '../camera/rig.ts';
import { atEyeHeight, atPlace, fields, inCab, onCoupling, straightDown, wholeRailway } from '../camera/viewpoints.ts';
import { betweenHeads, jointSubject } from '../lens/jointSubject.ts';
import type { LensSubject } from '../lens/lensFrame.ts';
import type { StageWorld } from './stageWorld.ts';
import { foremostFinding, otherChainage } from './subjects.ts';

/** Kept free around the railway in the first picture, px: title above, some air over the bars below. */
const clearTop = 58;
const clearSide = 26;
const clearOverBars = 11;

/** Most of the picture's size that a small stage gives to them; bars that take two lines under a finger may have more. */
const mostClear = 0.2;
const mostForBars = 0.36;

/** Height of picture on the way to a finding, as a share of the whole railway's, and at least, m. */
const findingShare = 0.55;
const findingHeight = 0.45;

/** Distance between places at which the railway's outline is looked at, m. */
const outlinePitch = 0.08;

/** What there is to look at on a stage, for its cameras. */
export class StageSights implements Sights {
  /** Places along every track, track by track: for keeping labels off them. */
  outlines: readonly (readonly Vec3[])[] = [];
  /** All of them in one, for framing the railway. */
  outline: readonly Vec3[] = [];
  /** px */
  size: readonly [width: number, height: number] = [1, 1];
  /** Height the bars at the foot of the picture take, px: as with one bar of a mouse until they are measured. */
  bars = 35;
  /** Whether the room around the railway is to be seen with it. */
  withRoom = false;
  private stand: Vec3 = [0, 0, 0];
  private wholeOf: { readonly outline: readonly Vec3[]; readonly height: number } | null = null;

  constructor(
    private readonly world: StageWorld,
    private readonly state: () => SessionState,
  ) {}

  /** Looks at the world's railway anew. */
  takeRailway(): void {
    this.outlines = (this.world.railway?.tracks ?? []).map(({ track }) => outlineOf(track));
    this.outline = this.outlines.flat();
  }

  /** Chooses where one stands at eye height: beside what is to be seen now. */
  takeStand(): void {
    this.stand = this.subject() ?? this.first().target;
  }

  joint(joint: number | null): LensSubject | null {
    const { train, standing } = this.world;
    return joint === null || train === null || !standing ? null : jointSubject(train.train, train.placements, joint);
  }

  /** Where a joint is now, m: between its two heads. */
  jointPlace(joint: number | null): Vec3 | null {
    const subject = this.joint(joint);
    return subject === null ? null : betweenHeads(subject);
  }

  subject(): Vec3 | null {
    const state = this.state();
    const joint = this.jointPlace(state.chosenJoint);
    if (joint !== null) return joint;
    const { train, standing } = this.world;
    if (train === null || !standing) return null;
    // A finding about a vehicle or an engine is followed where that one is.
    const reference = referenceOf(state);
    const vehicle =
      state.result !== null && reference.kind === 'subject'
        ? referenceVehicle(state.result, reference)
        : Math.floor(train.placements.length / 2);
    const { origin } = train.placements[vehicle];
    return [origin[0], origin[1], origin[2]];
  }

  ride(): Look | null {
    const { train, standing } = this.world;
    if (train === null || !standing) return null;
    const subject = this.joint(this.state().chosenJoint);
    if (subject !== null) return onCoupling(betweenHeads(subject), subject.trailing, subject.placedTrailing, 1);
    return inCab(train.train.vehicles[0], train.placements[0]);
  }

  eye(azimuth: number): Look {
    const { railway } = this.world;
    if (railway === null) return lookBetween([1, 0, 1], [0, 0, 0], fields.eye);
    const look = atEyeHeight(railway, this.stand, azimuth);
    const subject = this.subject();
    return subject === null ? look : lookBetween(eyeOf(look), subject, fields.eye);
  }

  down(): Look {
    return straightDown(this.framed, this.aspect, this.insets());
  }

  whole(): number {
    if (this.wholeOf?.outline !== this.outline) this.wholeOf = { outline: this.outline, height: this.first().height };
    return this.wholeOf.height;
  }

  /** The first picture of all: the whole railway, from the side where something is to be seen. */
  first(): Look {
    const state = this.state();
    const named = foremostFinding(state);
    const finding = named === null ? undefined : state.result?.findings[named];
    const interest = finding === undefined || state.trial === null ? null : placeOf(state.trial, finding.chainage);
    return wholeRailway(this.framed, this.aspect, this.insets(), interest === null ? null : xyz(interest));
  }

  /** A look at everything in the direction of another one. */
  around({ azimuth, elevation, field }: Look): Look {
    return frameAll(this.framed, { azimuth, elevation, field }, this.aspect, this.insets());
  }

  /** A look at the place of a finding from near by, coming from another look; null without one. */
  atFinding(index: number | null, from: Look): Look | null {
    const { result, trial } = this.state();
    const finding = index === null ? undefined : result?.findings[index];
    if (finding === undefined || trial === null) return null;
    const point = placeOf(trial, finding.chainage);
    const height = Math.max(findingHeight, Math.min(from.height, findingShare * this.whole()));
    return atPlace(xyz(point), point.heading, point.curvature, from, height);
  }

  /** A look at the joint that the lens is on, from near by; at its finding where one is chosen. */
  atLens(from: Look): Look | null {
    const { chosenFinding, chosenJoint } = this.state();
    const finding = this.atFinding(chosenFinding, from);
    const place = this.jointPlace(chosenJoint);
    const placed = chosenJoint === null ? undefined : this.world.train?.placements[chosenJoint];
    if (finding !== null || place === null || placed === undefined) return finding;
    const height = Math.max(findingHeight, Math.min(from.height, findingShare * this.whole()));
    return atPlace(place, Math.atan2(placed.ahead[1], placed.ahead[0]), 0, from, height);
  }

  /** What a picture of the whole railway has to show: its line, and in the Route chapter the handles that stand off it. */
  private get framed(): readonly Vec3[] {
    const { chapter, compiled } = this.state();
    if (chapter !== 'route' || compiled === null) return this.outline;
    const { scene, tracks } = compiled;
    const handles = [...tracks].flatMap(([id, track]) => handlesOf(scene, id, track));
    const around = this.withRoom ? roomHandles(scene, null) : [];
    return [...this.outline, ...[...handles, ...around].map(({ place: [x, y, z] }): Vec3 => [x, y, z])];
  }

  private insets(): Insets {
    const [width, height] = this.size;
    return {
      left: Math.min(mostClear, clearSide / width),
      right: Math.min(mostClear, clearSide / width),
      top: Math.min(mostClear, clearTop / height),
      bottom: Math.min(mostForBars, (this.bars + clearOverBars) / height),
    };
  }

  private get aspect(): number {
    return this.size[0] / this.size[1];
  }
}

const placeOf = (trial: NonNullable<SessionState['trial']>, chainage: number): TrackPoint =>
  trackPoint(trial.path.track, otherChainage(trial, chainage), {} as TrackPoint);

const xyz = ({ x, y, z }: TrackPoint): Vec3 => [x, y, z];

function outlineOf(track: Track): Vec3[] {
  const steps = Math.max(1, Math.ceil(track.length / outlinePitch));
  return Array.from({ length: steps + 1 }, (_, i) =>
    xyz(trackPoint(track, (track.length * i) / steps, {} as TrackPoint)),
  );
}
