import type { WebGLRenderer } from 'three';
import type { StoreApi } from 'zustand';
import type { SceneTourView } from '../../state/show/index.ts';
import type { PlaybackState, SessionState } from '../../state/types.ts';
import { CameraRig } from '../camera/rig.ts';
import { ghostHeads } from '../lens/jointSubject.ts';
import { type LensSubject, lensFrame } from '../lens/lensFrame.ts';
import { LensMotion } from '../lens/lensMotion.ts';
import { growing, type LensCircle, lensCircle, shiftForLens } from '../lens/lensPlace.ts';
import { columnAt } from '../stock/runClock.ts';
import { pickPost } from '../supports/pickPost.ts';
import { besideTime } from './besideClock.ts';
import { type Pixel, ringRadius, type Shown, type ShownLens } from './shown.ts';
import { StageSights } from './stageSights.ts';
import { type SharedStage, StageWorld } from './stageWorld.ts';
import { jointOf, markedSupports, ringedJoint } from './subjects.ts';
import { TourFlights } from './tourFlights.ts';

/** Takes the two stores to the picture: knows what has changed, what to move and what to draw. */
export class Director {
  readonly world = new StageWorld();
  readonly sights: StageSights;
  private roomBarToCome = false;
  /** The railway beside this one; null while there is none. */
  private other: StageWorld | null = null;
  rig: CameraRig | null = null;
  private state: SessionState;
  private time: number;
  private stood: { result: SessionState['result']; trial: SessionState['trial']; time: number } | null = null;
  private readonly lens = new LensMotion();
  private lensSide: 1 | -1 = 1;
  private lensJoint = 0;
  private lensShift = 0;
  private readonly flights: TourFlights;
  private readonly unsubscribe: (() => void)[];

  constructor(
    session: StoreApi<SessionState>,
    playback: StoreApi<PlaybackState>,
    private readonly invalidate: () => void,
    private readonly reducedMotion: () => boolean,
  ) {
    this.state = session.getState();
    this.time = playback.getState().time;
    this.sights = new StageSights(this.world, () => this.state);
    this.flights = new TourFlights(this.state, this.sights);
    this.take(null);
    this.unsubscribe = [
      session.subscribe((now, before) => {
        this.state = now;
        this.take(before);
        invalidate();
      }),
      playback.subscribe((now) => {
        this.time = now.time;
        invalidate();
      }),
    ];
  }

  private take(before: SessionState | null): void {
    const { state, world } = this;
    const now = performance.now();
    if (world.takeRailway(state.compiled)) {
      this.sights.takeRailway();
      this.stood = null;
    }
    // Another railway is looked at afresh; an edit of this one leaves the person where they stand.
    if (before?.opened !== state.opened || before?.scene?.name !== state.scene?.name) this.rig = null;
    const anotherTrial = before?.trial !== state.trial;
    if (anotherTrial) {
      world.takeTrial(state.trial);
      this.stood = null;
    }
    if (anotherTrial || before?.ghost !== state.ghost) world.takeGhost(state.ghost?.trial ?? null);
    if (anotherTrial || before?.beside !== state.beside || before?.besideLook.view !== state.besideLook.view) {
      this.takeBeside();
    }
    world.train?.choose(ringedJoint(state));
    world.supports?.mark(markedSupports(state));
    this.takeLens(before, now);
    this.moveCamera(before, now);
  }

  private takeBeside(): void {
    const { beside, besideLook } = this.state;
    if (beside === null) {
      this.other?.dispose();
      this.other = null;
      return;
    }
    this.other ??= new StageWorld();
    this.other.takeRailway(beside.compiled);
    this.other.takeTrial(beside.trial);
    this.other.haunt(besideLook.view === 'ghost' ? this.world : null);
  }

  /** The other railway with its train where it is now, and how the two share a stage of this width, px. */
  private shared(width: number): SharedStage | null {
    const { other, time } = this;
    const { beside, besideLook, trial, result } = this.state;
    if (other === null || beside === null || trial === null) return null;
    const own = result === null ? null : { trial, result };
    other.takeTime(beside.result, own === null ? time : besideTime(own, beside, besideLook.match, time));
    const { view, divider, flipped } = besideLook;
    return { world: other, view, flipped, divider: Math.round(divider * width) };
  }

  private takeLens(before: SessionState | null, now: number): void {
    const open = this.state.lens.open && ringedJoint(this.state) !== null;
    const turned = this.lens.turn(open, now, before === null || this.reducedMotion());
    if (!turned || !open || this.rig === null) return;
    // Looks through the lens from the side one is on.
    const placed = this.world.train?.placements[ringedJoint(this.state) ?? 0];
    if (placed === undefined) return;
    const { azimuth } = this.rig.look;
    this.lensSide = placed.left[0] * Math.cos(azimuth) + placed.left[1] * Math.sin(azimuth) >= 0 ? 1 : -1;
  }

  private moveCamera(before: SessionState | null, now: number): void {
    const { state, rig, sights } = this;
    if (rig === null || before === null) return;
    // A stop of the tour is gone to once the train stands where it is then.
    if (before.tour.went !== state.tour.went) return;
    if (before.wholeAsked !== state.wholeAsked) {
      rig.showWhole(sights.first(), now);
      return;
    }
    if (rig.mode !== state.camera) {
      if (state.camera === 'eye') sights.takeStand();
      rig.change(state.camera, now);
    }
    // The first result tells which side is worth seeing, unless the person already looks where they will.
    if (before.result === null && state.result !== null && !rig.touched) rig.goTo(sights.first(), now);
    // A finding that the person chose, not one that came with a new run.
    if (before.result === state.result && before.chosenFinding !== state.chosenFinding) {
      const look = sights.atFinding(state.chosenFinding, rig.look);
      if (look === null) return;
      rig.goTo(look, now);
      rig.touched = true;
    }
  }

  /** What the picture shows now, as a view of a tour. */
  view(): SceneTourView | null {
    return this.flights.taken(this.state, this.rig);
  }

  private makeRig(): CameraRig | null {
    const { sights } = this;
    if (sights.outline.length === 0) return null;
    const rig = new CameraRig(sights.first(), sights, this.reducedMotion);
    sights.takeStand();
    rig.begin(this.state.camera);
    return rig;
  }

  /** Draws one frame and says what it shows. Null while there is nothing to draw or no room to draw it in. */
  frame(gl: WebGLRenderer, width: number, height: number): Shown | null {
    if (width < 2 || height < 2) return null;
    const { state, world, time, sights } = this;
    const now = performance.now();
    const resized = width !== sights.size[0] || height !== sights.size[1];
    sights.size = [width, height];
    this.standTrain();
    this.rig ??= this.makeRig();
    const { rig } = this;
    if (rig === null) {
      gl.clear();
      return null;
    }
    if (resized && !rig.touched && (this.flights.onWhole || !rig.moving)) rig.restart(sights.first());
    this.flights.follow(state, rig, now);
    const moving = rig.step(now);
    const share = this.lens.share(now);
    const joint = ringedJoint(state);
    if (state.lens.open && joint !== null) this.lensJoint = joint;

    const shared = this.shared(width);
    world.aim(rig.look, width, height, 0, this.other);
    const place = sights.jointPlace(joint ?? this.lensJoint);
    const subject = share > 0 ? sights.joint(this.lensJoint) : null;
    const open = lensCircle(width, height);
    if (subject !== null && place !== null) {
      const bare = world.toPixel(place, width, height);
      if (this.lens.opening) this.lensShift = bare === null ? 0 : shiftForLens(bare.x, open);
      world.aim(rig.look, width, height, this.lensShift * share, this.other);
    }
    const ring = place === null ? null : world.toPixel(place, width, height);
    const lens = subject === null ? null : this.lensNow(subject, ring ?? { x: width / 2, y: height / 2 }, open, share);
    world.draw(gl, width, height, rig.look, lens, shared);
    const owns = ({ x }: Pixel): boolean =>
      shared?.view === 'split' ? x < shared.divider : !(shared?.view === 'flip' && shared.flipped);
    if (moving || this.lens.moving(now)) this.invalidate();
    return {
      width,
      height,
      look: rig.look,
      time,
      state,
      toPixel: (at) => world.toPixel(at, width, height),
      ring: joint === null || ring === null || !owns(ring) ? null : ring,
      lens,
      owns,
    };
  }

  private standTrain(): void {
    const { state, time, stood } = this;
    if (stood?.result === state.result && stood.trial === state.trial && stood.time === time) return;
    this.world.takeTime(state.result, time);
    this.stood = { result: state.result, trial: state.trial, time };
  }

  private lensNow(subject: LensSubject, ring: Pixel, open: LensCircle, share: number): ShownLens | null {
    const { state, world, lensJoint: joint } = this;
    if (world.railway === null) return null;
    const { measures } = world.railway;
    const run = state.result?.run;
    return {
      joint,
      frame: lensFrame(
        subject,
        state.lens.view,
        this.lensSide,
        measures.gauge,
        measures.stripWidth / 2 + measures.gauge,
      ),
      open,
      now: growing({ ...ring, radius: ringRadius }, open, share),
      share,
      subject,
      force: run === undefined ? null : columnAt(run, run.force, run.vehicles - 1, joint, this.time),
      ghostHeads: state.ghost === null ? null : ghostHeads(state.ghost.trial, joint, subject),
    };
  }

  /** Joint nearest to a place on the stage, within `reach` px; null when none is. */
  jointAt(pixel: Pixel, reach: number): number | null {
    const [width, height] = this.sights.size;
    let best: number | null = null;
    let least = reach;
    (this.world.train?.joints ?? []).forEach((_, joint) => {
      const place = this.sights.jointPlace(joint);
      const at = place === null ? null : this.world.toPixel(place, width, height);
      if (at === null) return;
      const away = Math.hypot(at.x - pixel.x, at.y - pixel.y);
      if (away < least) {
        least = away;
        best = joint;
      }
    });
    return best;
  }

  /** Support whose post is nearest to a place on the stage, within `reach` px; null when none is. */
  supportAt(pixel: Pixel, reach: number): ReturnType<typeof pickPost> {
    const [width, height] = this.sights.size;
    const posts = this.world.supports?.posts ?? [];
    return pickPost(posts, pixel, reach, (place) => this.world.toPixel(place, width, height));
  }

  /** Looks at the room too, from where the eye is, or at the railway alone from now on. */
  showRoom(room: boolean): void {
    const { rig, sights } = this;
    this.roomBarToCome = room && !sights.withRoom;
    sights.withRoom = room;
    if (!room || rig === null) return;
    const now = performance.now();
    if (rig.mode === 'down') rig.lookDown(now);
    else rig.goTo(sights.around(rig.look), now);
    this.invalidate();
  }

  /**
   * Takes how much of the picture's foot lies under bars, px. The room comes with a bar of its own and is moved clear of it; after that, and once
   * a person has turned the picture, nothing moves under the hand.
   */
  takeBars(height: number): void {
    const { rig, sights } = this;
    if (height === sights.bars) return;
    sights.bars = height;
    if (this.roomBarToCome) this.showRoom(true);
    else if (sights.withRoom) return;
    else if (rig !== null && !rig.touched && !rig.moving && sights.size[0] > 1) rig.restart(sights.first());
    this.invalidate();
  }

  /** Joint that the finding at an index is about, or null. */
  jointOfFinding(index: number): number | null {
    return jointOf(this.state.result?.findings[index]);
  }

  dispose(): void {
    for (const stop of this.unsubscribe) stop();
    this.other?.dispose();
    this.world.dispose();
  }
}
