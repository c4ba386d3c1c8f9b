import { Vector3, type WebGLRenderer } from 'three';
import type { StoreApi } from 'zustand';
import type { Vec3 } from '../../core/math/vec3.ts';
import { newPlacement, placeVehicle } from '../../core/stock/index.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { TrackPoint } from '../../core/track/types.ts';
import type { PlaybackState, SessionState } from '../../state/types.ts';
import type { Insets } from '../camera/framing.ts';
import { easeOut, eyeOf, type Look, lookBetween } from '../camera/look.ts';
import { CameraRig } from '../camera/rig.ts';
import { atEyeHeight, atPlace, fields, inCab, onCoupling, straightDown, wholeRailway } from '../camera/viewpoints.ts';
import { headPlaces, type LensFrame, type LensSubject, lensFrame } from '../lens/lensFrame.ts';
import { growing, type LensCircle, lensCircle, shiftForLens } from '../lens/lensPlace.ts';
import { columnAt } from '../stock/runClock.ts';
import { StageWorld } from './stageWorld.ts';
import { blamedSupports, jointOf, namedFinding, otherChainage, ringedJoint } from './subjects.ts';

/** A place on the stage, px from its upper left corner. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** What one frame showed: all that the lettering over it needs. */
export interface Shown {
  readonly width: number;
  readonly height: number;
  readonly look: Look;
  readonly time: number;
  readonly state: SessionState;
  /** Where a place in the room is on the stage; null behind the eye or far outside. */
  readonly toPixel: (place: Vec3) => Pixel | null;
  readonly ring: Pixel | null;
  readonly lens: ShownLens | null;
  /** The view or the size differs from the frame before. */
  readonly viewChanged: boolean;
}

export interface ShownLens {
  readonly joint: number;
  readonly frame: LensFrame;
  /** As it lies when open, and as it lies now. */
  readonly open: LensCircle;
  readonly now: LensCircle;
  readonly share: number;
  readonly subject: LensSubject;
  readonly force: number | null;
  readonly ghostHeads: { readonly leading: Vec3; readonly trailing: Vec3 } | null;
}

/** Lens opening and closing, ms. */
const lensTime = 160;

/** Ring on the chosen joint, px. */
export const ringRadius = 10;

/** Kept free around the railway in the first picture, px: title above, cameras below. */
const clearTop = 58;
const clearFoot = 46;
const clearSide = 26;

/** Height of picture on the way to a finding, as a share of the whole railway's, and at least, m. */
const findingShare = 0.55;
const findingHeight = 0.45;

/** Distance between places at which the railway's outline is looked at, m. */
const outlinePitch = 0.08;

/** Beyond this many px outside the stage a place is out of sight. */
const outOfSight = 4000;

const projected = new Vector3();

/** Takes the two stores to the picture: knows what has changed, what to move and what to draw. */
export class Director {
  readonly world = new StageWorld();
  rig: CameraRig | null = null;
  /** Places along the trial's track, for framing it and for keeping labels off it. */
  outline: Vec3[] = [];
  private state: SessionState;
  private time: number;
  private stood: { result: SessionState['result']; trial: SessionState['trial']; time: number } | null = null;
  private size: [width: number, height: number] = [0, 0];
  private eyeStand: Vec3 = [0, 0, 0];
  private lensSide: 1 | -1 = 1;
  private lensMove: { readonly from: number; readonly to: number; readonly start: number } = {
    from: 0,
    to: 0,
    start: 0,
  };
  private lensJoint = 0;
  private lensShift = 0;
  private lastView = '';
  private readonly unsubscribe: (() => void)[];

  constructor(
    session: StoreApi<SessionState>,
    private readonly playback: StoreApi<PlaybackState>,
    private readonly invalidate: () => void,
    private readonly reducedMotion: () => boolean,
  ) {
    this.state = session.getState();
    this.time = playback.getState().time;
    this.takeAll(null);
    this.unsubscribe = [
      session.subscribe((now, before) => {
        this.state = now;
        this.takeAll(before);
        invalidate();
      }),
      playback.subscribe((now) => {
        this.time = now.time;
        invalidate();
      }),
    ];
  }

  private takeAll(before: SessionState | null): void {
    const { state, world } = this;
    if (world.takeRailway(state.compiled)) this.stood = null;
    // Another railway is looked at afresh; an edit of this one leaves the person where they stand.
    if (before === null || before.opened !== state.opened || before.scene?.name !== state.scene?.name) this.rig = null;
    if (before === null || before.trial !== state.trial) {
      world.takeTrial(state.trial);
      this.stood = null;
      this.outline = outlineOf(state);
    }
    world.train?.choose(ringedJoint(state));
    world.markSupports(state.trial?.trackId ?? null, blamedSupports(state));
    if (before === null || before.ghost !== state.ghost || before.trial !== state.trial) {
      world.takeGhost(state.ghost?.trial ?? null);
    }
    const now = performance.now();
    if (this.rig !== null && this.rig.mode !== state.camera) {
      if (state.camera === 'eye') this.eyeStand = this.subject() ?? this.middle();
      this.rig.change(state.camera, now);
    }
    this.takeLens(before, now);
    // The first result tells which side is worth seeing, unless the person already looks where they will.
    if (before !== null && before.result === null && state.result !== null && this.rig?.touched === false) {
      this.rig.goTo(this.firstLook(), now);
    }
    // A finding that the person chose, not one that came with a new run.
    if (before !== null && before.result === state.result && before.chosenFinding !== state.chosenFinding) {
      this.goToFinding(now);
    }
  }

  private takeLens(before: SessionState | null, now: number): void {
    const open = this.state.lens.open && ringedJoint(this.state) !== null;
    if (open === (this.lensMove.to === 1)) return;
    const from = this.lensShare(now);
    this.lensMove = { from, to: open ? 1 : 0, start: this.reducedMotion() || before === null ? -lensTime : now };
    if (open) this.chooseLensSide();
  }

  private lensShare(now: number): number {
    const { from, to, start } = this.lensMove;
    const share = Math.min(1, Math.max(0, (now - start) / lensTime));
    return from + (to - from) * easeOut(share);
  }

  /** Looks through the lens from the side one is on. */
  private chooseLensSide(): void {
    const joint = ringedJoint(this.state);
    if (joint === null || this.rig === null) return;
    const placed = this.world.train?.placements[joint];
    if (placed === undefined) return;
    const { azimuth } = this.rig.look;
    this.lensSide = placed.left[0] * Math.cos(azimuth) + placed.left[1] * Math.sin(azimuth) >= 0 ? 1 : -1;
  }

  private goToFinding(now: number): void {
    const { state, rig } = this;
    const finding = state.chosenFinding === null ? undefined : state.result?.findings[state.chosenFinding];
    if (finding === undefined || rig === null || state.trial === null) return;
    const point = trackPoint(state.trial.path.track, otherChainage(state.trial, finding.chainage), {} as TrackPoint);
    const height = Math.max(findingHeight, Math.min(rig.look.height, findingShare * this.wholeHeight()));
    rig.goTo(atPlace([point.x, point.y, point.z], point.heading, point.curvature, rig.look, height), now);
  }

  /** Where the ringed joint is now, m: between its two heads. */
  jointPlace(joint: number | null): Vec3 | null {
    const subject = this.lensSubject(joint);
    if (subject === null) return null;
    const { leading, trailing } = headPlaces(subject);
    return [(leading[0] + trailing[0]) / 2, (leading[1] + trailing[1]) / 2, (leading[2] + trailing[2]) / 2];
  }

  private lensSubject(joint: number | null): LensSubject | null {
    const { train } = this.world;
    if (joint === null || train === null || !this.world.standing) return null;
    const { vehicles } = train.train;
    if (joint + 1 >= vehicles.length) return null;
    return {
      leading: vehicles[joint],
      trailing: vehicles[joint + 1],
      placedLeading: train.placements[joint],
      placedTrailing: train.placements[joint + 1],
    };
  }

  private subject(): Vec3 | null {
    const joint = this.jointPlace(this.state.chosenJoint);
    if (joint !== null) return joint;
    const { train, standing } = this.world;
    if (train === null || !standing) return null;
    const { origin } = train.placements[Math.floor(train.placements.length / 2)];
    return [origin[0], origin[1], origin[2]];
  }

  private rideLook(): Look | null {
    const { train, standing } = this.world;
    if (train === null || !standing) return null;
    const { chosenJoint } = this.state;
    const joint = this.jointPlace(chosenJoint);
    if (joint !== null && chosenJoint !== null) {
      return onCoupling(joint, train.train.vehicles[chosenJoint + 1], train.placements[chosenJoint + 1], 1);
    }
    return inCab(train.train.vehicles[0], train.placements[0]);
  }

  private insets(): Insets {
    const [width, height] = this.size;
    return {
      left: clearSide / width,
      right: clearSide / width,
      top: Math.min(0.2, clearTop / height),
      bottom: Math.min(0.2, clearFoot / height),
    };
  }

  private get aspect(): number {
    return this.size[0] / this.size[1];
  }

  private middle(): Vec3 {
    return wholeRailway(this.outline, this.aspect, this.insets(), null).target;
  }

  private whole: { readonly outline: readonly Vec3[]; readonly height: number } | null = null;

  private wholeHeight(): number {
    if (this.whole?.outline !== this.outline) {
      this.whole = {
        outline: this.outline,
        height: wholeRailway(this.outline, this.aspect, this.insets(), null).height,
      };
    }
    return this.whole.height;
  }

  /** The first picture of all: the whole railway, from the side where something is to be seen. */
  private firstLook(): Look {
    const named = namedFinding(this.state);
    const finding = named === null ? undefined : this.state.result?.findings[named];
    let interest: Vec3 | null = null;
    if (finding !== undefined && this.state.trial !== null) {
      const s = otherChainage(this.state.trial, finding.chainage);
      const { x, y, z } = trackPoint(this.state.trial.path.track, s, {} as TrackPoint);
      interest = [x, y, z];
    }
    return wholeRailway(this.outline, this.aspect, this.insets(), interest);
  }

  private makeRig(): CameraRig | null {
    if (this.outline.length === 0) return null;
    const start = this.firstLook();
    const rig = new CameraRig(
      start,
      {
        subject: () => this.subject(),
        ride: () => this.rideLook(),
        eye: (azimuth) => this.eyeLook(azimuth),
        down: () => straightDown(this.outline, this.aspect, this.insets()),
        whole: () => this.wholeHeight(),
      },
      this.reducedMotion,
    );
    this.eyeStand = this.subject() ?? start.target;
    rig.begin(this.state.camera);
    return rig;
  }

  private eyeLook(azimuth: number): Look {
    const { railway } = this.world;
    if (railway === null) return lookBetween([1, 0, 1], [0, 0, 0], fields.eye);
    const stand = atEyeHeight(railway, this.eyeStand, azimuth);
    const subject = this.subject();
    return subject === null ? stand : lookBetween(eyeOf(stand), subject, fields.eye);
  }

  /** Draws one frame and says what it shows. Null while there is nothing to draw or no room to draw it in. */
  frame(gl: WebGLRenderer, width: number, height: number): Shown | null {
    if (width < 2 || height < 2) return null;
    const now = performance.now();
    const resized = width !== this.size[0] || height !== this.size[1];
    this.size = [width, height];
    const { state, world, time } = this;
    const { stood } = this;
    if (stood === null || stood.result !== state.result || stood.trial !== state.trial || stood.time !== time) {
      world.takeTime(state.result, time);
      this.stood = { result: state.result, trial: state.trial, time };
    }
    this.rig ??= this.makeRig();
    const { rig } = this;
    if (rig === null) {
      gl.clear();
      return null;
    }
    const moving = rig.step(now);
    const share = this.lensShare(now);
    const lensMoving = share !== this.lensMove.to;
    const joint = ringedJoint(state);
    if (state.lens.open && joint !== null) this.lensJoint = joint;

    world.aim(rig.look, width, height, 0);
    const place = this.jointPlace(joint ?? this.lensJoint);
    const subject = share > 0 ? this.lensSubject(this.lensJoint) : null;
    const open = lensCircle(width, height);
    if (subject !== null && place !== null) {
      const bare = this.toPixel(place, width, height);
      if (this.lensMove.to === 1) this.lensShift = bare === null ? 0 : shiftForLens(bare.x, open);
      world.aim(rig.look, width, height, this.lensShift * share);
    }
    const ring = place === null ? null : this.toPixel(place, width, height);
    const lens = subject === null ? null : this.lensNow(subject, ring ?? { x: width / 2, y: height / 2 }, open, share);
    world.draw(
      gl,
      width,
      height,
      rig.look,
      lens === null ? null : { frame: lens.frame, circle: lens.now, joint: lens.joint },
    );
    if (moving || lensMoving) this.invalidate();

    const view = JSON.stringify([rig.look, width, height, this.lensShift * share]);
    const viewChanged = resized || view !== this.lastView;
    this.lastView = view;
    return {
      width,
      height,
      look: rig.look,
      time,
      state,
      toPixel: (at) => this.toPixel(at, width, height),
      ring: joint === null ? null : ring,
      lens,
      viewChanged,
    };
  }

  private lensNow(subject: LensSubject, ring: Pixel, open: LensCircle, share: number): ShownLens {
    const { state, world } = this;
    const { measures } = world.railway!;
    const joint = this.lensJoint;
    const depth = measures.stripWidth / 2 + measures.gauge;
    const frame = lensFrame(subject, state.lens.view, this.lensSide, measures.gauge, depth);
    const run = state.result?.run;
    return {
      joint,
      frame,
      open,
      now: growing({ ...ring, radius: ringRadius }, open, share),
      share,
      subject,
      force: run === undefined ? null : columnAt(run, run.force, run.vehicles - 1, joint, this.time),
      ghostHeads: this.ghostHeads(joint, subject),
    };
  }

  /** The same two vehicles at the same chainages on the track that the tried cure would make. */
  private ghostHeads(joint: number, subject: LensSubject): { leading: Vec3; trailing: Vec3 } | null {
    const ghost = this.state.ghost?.trial;
    const vehicles = ghost?.train.vehicles;
    if (ghost === undefined || vehicles === undefined || vehicles.length <= joint + 1) return null;
    try {
      return headPlaces({
        leading: vehicles[joint],
        trailing: vehicles[joint + 1],
        placedLeading: placeVehicle(ghost.path.track, vehicles[joint], subject.placedLeading.chainage, newPlacement()),
        placedTrailing: placeVehicle(
          ghost.path.track,
          vehicles[joint + 1],
          subject.placedTrailing.chainage,
          newPlacement(),
        ),
      });
    } catch (error) {
      if (error instanceof RangeError) return null;
      throw error;
    }
  }

  private toPixel(place: Vec3, width: number, height: number): Pixel | null {
    projected.set(...place).project(this.world.camera);
    if (projected.z > 1 || projected.z < -1) return null;
    const x = ((projected.x + 1) / 2) * width;
    const y = ((1 - projected.y) / 2) * height;
    return Math.abs(x) > outOfSight || Math.abs(y) > outOfSight ? null : { x, y };
  }

  /** Joint nearest to a place on the stage, within `reach` px; null when none is. */
  jointAt(pixel: Pixel, reach: number): number | null {
    const [width, height] = this.size;
    let best: number | null = null;
    let least = reach;
    (this.world.train?.joints ?? []).forEach((_, joint) => {
      const place = this.jointPlace(joint);
      const at = place === null ? null : this.toPixel(place, width, height);
      if (at === null) return;
      const away = Math.hypot(at.x - pixel.x, at.y - pixel.y);
      if (away < least) {
        least = away;
        best = joint;
      }
    });
    return best;
  }

  /** Joint of the finding at an index, or null. */
  jointOfFinding(index: number): number | null {
    return jointOf(this.state.result?.findings[index]);
  }

  get playing(): boolean {
    return this.playback.getState().playing;
  }

  dispose(): void {
    for (const stop of this.unsubscribe) stop();
    this.world.dispose();
  }
}

function outlineOf(state: SessionState): Vec3[] {
  const track = state.trial?.path.track;
  if (track === undefined) return [];
  const point = {} as TrackPoint;
  const steps = Math.max(1, Math.ceil(track.length / outlinePitch));
  return Array.from({ length: steps + 1 }, (_, i): Vec3 => {
    trackPoint(track, (track.length * i) / steps, point);
    return [point.x, point.y, point.z];
  });
}
