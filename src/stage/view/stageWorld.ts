/*
 * Over 300 lines for a reason: what stands on the stage, what hides it for a picture and in what order it is painted are one piece of state; what can be worked out
 * without it lies beside.
 */
import { Group, type Mesh, PerspectiveCamera, Scene, type WebGLRenderer } from 'three';
import type { Vec3 } from '../../core/math/vec3.ts';
import { nearestChainage } from '../../core/track/index.ts';
import type { BesideView, SessionState } from '../../state/types.ts';
import { eyeDistance, eyeOf, type Look, pictureAxes } from '../camera/look.ts';
import { type InkView, inkGeometry, inkMaterial, inkMesh, newInkView } from '../ink/ink.ts';
import type { LensFrame } from '../lens/lensFrame.ts';
import { LensPainter } from '../lens/lensPainter.ts';
import { sectionCut } from '../lens/sectionCut.ts';
import { wayStrokes } from '../palette.ts';
import { type Railway, railwayOf } from '../railway.ts';
import { RoomModel } from '../room/roomModel.ts';
import { chainagesAt, standingChainages } from '../stock/runClock.ts';
import { TrainModel } from '../stock/trainModel.ts';
import { SupportsModel } from '../supports/supportsModel.ts';
import { addTables } from '../table/tableModel.ts';
import { ghostLines } from '../way/ghostLines.ts';
import { WayModel } from '../way/wayModel.ts';
import { standingKey, trainKey } from './drawnKeys.ts';
import { wantsHeavier } from './followTheme.ts';
import { type Reach, reachOf } from './reach.ts';
import type { Pixel, ShownLens } from './shown.ts';
import { pixelOf, placeUnder } from './sight.ts';

type Compiled = NonNullable<SessionState['compiled']>;
type Trial = NonNullable<SessionState['trial']>;

/** Vehicles show their running gear from this many screen pixels a metre. */
const worthRunningGear = 620;

/** How much heavier lines are for those who ask for more contrast. */
const moreContrast = 1.5;

/** From this height of the eye on the picture is a plan, rad. */
const plan = 1.45;

/** The section of the strip lies this far inside the cut, so that all of it is in the picture, m. */
const cutInside = 0.0012;

/** Dashes of the ghost's lines, screen pixels. */
const ghostDash = [3, 2.5] as const;

/** Nearest the near plane may come, m, and its share of the distance to the target. */
const leastNear = 0.004;
const nearShare = 0.04;

/** A second railway and how it shares the stage. */
export interface SharedStage {
  readonly world: StageWorld;
  readonly view: BesideView;
  /** px from the left. */
  readonly divider: number;
  readonly flipped: boolean;
}

/** Everything that is drawn, and the camera it is drawn with. Holds no state of its own but what the card needs. */
export class StageWorld {
  readonly scene = new Scene();
  readonly camera = new PerspectiveCamera();
  railway: Railway | null = null;
  train: TrainModel | null = null;
  /** False while the train does not fit the track where it should stand. */
  standing = false;
  private readonly view: InkView = newInkView();
  private readonly lens = new LensPainter();
  private way: WayModel | null = null;
  private room: RoomModel | null = null;
  supports: SupportsModel | null = null;
  private tables: { dispose(): void }[] = [];
  private tableMeshes: Mesh[] = [];
  private ghost: { readonly ink: Mesh; dispose(): void } | null = null;
  private compiled: Compiled | null = null;
  private standingKey: string | null = null;
  private trial: Trial | null = null;
  private chainages = new Float64Array(0);
  private reach: Reach = { centre: [0, 0, 0], radius: 1 };
  /** The scene that way and train stand in: the own one, or that of the railway they are a ghost in. */
  private host = this.scene;

  /** Takes what stands still from a session. Returns whether the railway is another one than before. */
  takeRailway(compiled: Compiled | null): boolean {
    if (compiled === this.compiled) return false;
    this.compiled = compiled;
    const standing = compiled === null ? null : standingKey(compiled);
    if (standing === this.standingKey) return false;
    this.standingKey = standing;
    this.clearRailway();
    if (compiled === null) return true;
    const railway = railwayOf(compiled);
    this.railway = railway;
    this.way = new WayModel(railway, this.view);
    this.supports = new SupportsModel(railway, this.view);
    this.room = new RoomModel(railway, this.view);
    const tables = new Group();
    this.tables = addTables(tables, railway, this.view);
    this.tableMeshes = [...tables.children] as Mesh[];
    this.host.add(this.way.group);
    this.scene.add(this.supports.group, this.room.group, ...this.tableMeshes);
    this.reach = reachOf(railway);
    return true;
  }

  /** Takes the train that runs. */
  takeTrial(trial: Trial | null): void {
    if (trial === this.trial) return;
    const sameTrain = trial !== null && this.trial !== null && trainKey(trial) === trainKey(this.trial);
    this.trial = trial;
    if (!sameTrain) {
      this.clearTrain();
      if (trial !== null) {
        this.train = new TrainModel(trial.train, this.view);
        this.host.add(this.train.group);
      }
    }
    this.chainages = new Float64Array(trial?.train.vehicles.length ?? 0);
  }

  /** Stands the train where it is at a time (s) of its run, or at the start when there is no run yet. */
  takeTime(result: SessionState['result'], time: number): void {
    const { train, trial } = this;
    if (train === null || trial === null) return;
    const run = result !== null && result.run.vehicles === trial.train.vehicles.length ? result.run : null;
    if (run !== null) chainagesAt(run, time, this.chainages);
    else {
      const standing = standingChainages(trial);
      if (standing === null) {
        this.standing = false;
        train.group.visible = false;
        return;
      }
      this.chainages.set(standing);
    }
    this.standing = train.stand(trial.path.track, this.chainages);
    train.group.visible = this.standing;
  }

  /** Shows where another trial's track leaves the present one's; null takes it away. */
  takeGhost(ghost: Trial | null): void {
    if (this.ghost !== null) {
      this.scene.remove(this.ghost.ink);
      this.ghost.dispose();
      this.ghost = null;
    }
    if (ghost === null || this.trial === null || this.railway === null) return;
    const strokes = ghostLines(this.trial.path.track, ghost.path.track, this.railway.measures);
    if (strokes.from.length === 0) return;
    const geometry = inkGeometry(strokes);
    const material = inkMaterial(this.view, wayStrokes, { dash: ghostDash });
    const ink = inkMesh(geometry, material);
    this.scene.add(ink);
    this.ghost = {
      ink,
      dispose: () => {
        geometry.dispose();
        material.dispose();
      },
    };
  }

  /** Stands way and train as a faint ghost in another railway's scene; null: in full in the own one. */
  haunt(other: StageWorld | null): void {
    const faint = other !== null;
    this.host = other?.scene ?? this.scene;
    for (const model of [this.way, this.train]) {
      if (model === null) continue;
      this.host.add(model.group);
      model.faint(faint);
    }
  }

  /** Points the camera. `width` and `height` of the stage and `shift` to the left are in px. */
  aim(look: Look, width: number, height: number, shift: number, other: StageWorld | null = null): void {
    const { camera } = this;
    const eye = eyeOf(look);
    const { up } = pictureAxes(look);
    camera.position.set(...eye);
    camera.up.set(...up);
    camera.lookAt(...look.target);
    camera.fov = (look.field * 180) / Math.PI;
    camera.aspect = width / height;
    const reaches = [this, ...(other === null ? [] : [other])].map((one) => {
      const { centre, radius } = one.reach;
      const [x, y, z] = centre;
      const far = Math.hypot(eye[0] - x, eye[1] - y, eye[2] - z);
      return [far - radius, far + radius + 0.1] as const;
    });
    camera.near = Math.max(leastNear, Math.min(...reaches.map(([near]) => near)), nearShare * eyeDistance(look));
    camera.far = Math.max(...reaches.map(([, far]) => far));
    if (shift !== 0) camera.setViewOffset(width, height, shift, 0, width, height);
    else camera.clearViewOffset();
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
  }

  /** Draws the stage, with a second railway if there is one, and in a circle of it (px) what the lens sees. */
  draw(
    gl: WebGLRenderer,
    width: number,
    height: number,
    look: Look,
    lens: ShownLens | null,
    other: SharedStage | null = null,
  ): void {
    gl.autoClear = false;
    gl.setRenderTarget(null);
    gl.setScissorTest(false);
    gl.setViewport(0, 0, width, height);
    gl.clear(true, true, true);
    const ratio = gl.getPixelRatio();
    for (const { view } of [this, ...(other === null ? [] : [other.world])]) {
      view.ratio.value = ratio;
      view.heavier.value = wantsHeavier() ? moreContrast : 1;
    }
    const ghost = other?.view === 'ghost' ? other.world : null;
    if (lens !== null) {
      ghost?.hide(true);
      this.drawLens(gl, height, lens);
      ghost?.hide(false);
    }
    gl.setViewport(0, 0, width, height);
    ghost?.prepare(width, height, ratio, look);
    if (other?.view === 'split') {
      gl.setScissorTest(true);
      gl.setScissor(0, 0, other.divider, height);
      this.paint(gl, this.camera, width, height, look);
      gl.setScissor(other.divider, 0, width - other.divider, height);
      other.world.paint(gl, this.camera, width, height, look);
      gl.setScissorTest(false);
    } else (other?.view === 'flip' && other.flipped ? other.world : this).paint(gl, this.camera, width, height, look);
  }

  private paint(gl: WebGLRenderer, camera: PerspectiveCamera, width: number, height: number, look: Look): void {
    this.prepare(width, height, gl.getPixelRatio(), look);
    gl.render(this.scene, camera);
  }

  private prepare(width: number, height: number, ratio: number, look: Look): void {
    this.view.size.value.set(width * ratio, height * ratio);
    this.view.metresPerPixel.value = look.height / height;
    this.chooseDetail(look, height);
    this.train?.showHidden(look.elevation > plan);
  }

  private hide(hidden: boolean): void {
    if (this.way !== null) this.way.group.visible = !hidden;
    if (this.train !== null) this.train.group.visible = !hidden && this.standing;
  }

  /** Where a place in the room is on the stage, px; null behind the eye or far outside. */
  toPixel(place: Vec3, width: number, height: number): Pixel | null {
    return pixelOf(this.camera, place, width, height);
  }

  /** The place in the room at a height (m) that a pixel of the stage shows; null where the line of sight does not meet it ahead. */
  toPlan(pixel: Pixel, z: number, width: number, height: number): Vec3 | null {
    return placeUnder(this.camera, pixel, z, width, height);
  }

  private chooseDetail(look: Look, height: number): void {
    const eye = eyeOf(look);
    const perRadian = height / 2 / Math.tan(look.field / 2);
    const pixels = (place: Vec3, radius: number): number => {
      const away = Math.hypot(place[0] - eye[0], place[1] - eye[1], place[2] - eye[2]) - radius;
      return perRadian / Math.max(away, 0.02);
    };
    this.way?.showAll(pixels);
    this.train?.placements.forEach((placed, i) => {
      this.train?.detail(i, pixels(placed.origin, 0.05) > worthRunningGear);
    });
  }

  private drawLens(gl: WebGLRenderer, height: number, { frame, now: circle, joint }: ShownLens): void {
    const { way, supports, train, room, view } = this;
    const size = 2 * circle.radius;
    const ratio = gl.getPixelRatio();
    view.size.value.set(size * ratio, size * ratio);
    view.metresPerPixel.value = (2 * frame.radius) / size;
    way?.showAround(frame.centre, 2 * frame.radius);
    for (const mesh of this.tableMeshes) mesh.visible = false;
    train?.detailForLens(joint, frame.view);
    train?.showHidden(false);
    for (const model of [way, supports, train, room]) model?.underLens(true);
    const cut = frame.view === 'along' ? this.cutAcross(frame) : null;
    this.lens.draw(gl, this.scene, frame, circle, height);
    cut?.remove();
    for (const model of [way, supports, train, room]) model?.underLens(false);
    for (const mesh of this.tableMeshes) mesh.visible = true;
  }

  /** Closes the strip where the view along the train cuts it: for one picture. */
  private cutAcross(frame: LensFrame): { remove(): void } | null {
    if (this.railway === null || this.trial === null || this.way === null) return null;
    const { track } = this.trial.path;
    const at: Vec3 = [
      frame.centre[0] - frame.before * frame.ahead[0],
      frame.centre[1] - frame.before * frame.ahead[1],
      frame.centre[2],
    ];
    const solid = sectionCut(track, nearestChainage(track, at).chainage + cutInside, this.railway.measures);
    return this.way.drawOnce(solid);
  }

  private clearRailway(): void {
    this.takeGhost(null);
    for (const model of [this.way, this.supports, this.room]) {
      if (model === null) continue;
      model.group.removeFromParent();
      model.dispose();
    }
    this.scene.remove(...this.tableMeshes);
    for (const owned of this.tables) owned.dispose();
    this.way = null;
    this.supports = null;
    this.room = null;
    this.tables = [];
    this.tableMeshes = [];
    this.railway = null;
  }

  private clearTrain(): void {
    if (this.train === null) return;
    this.train.group.removeFromParent();
    this.train.dispose();
    this.train = null;
    this.standing = false;
  }

  dispose(): void {
    this.clearRailway();
    this.clearTrain();
    this.lens.dispose();
  }
}
