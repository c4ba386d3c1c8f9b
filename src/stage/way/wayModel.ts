import { type BufferGeometry, Group, Mesh, type ShaderMaterial } from 'three';
import type { Vec3 } from '../../core/math/vec3.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { Track, TrackPoint } from '../../core/track/types.ts';
import { faintInk, type InkView, inkGeometry, inkMaterial, inkMesh, orderInk } from '../ink/ink.ts';
import { faintFaces, faintStrokes, lensWayFaces, wayFaces, wayStrokes } from '../palette.ts';
import type { Railway } from '../railway.ts';
import { mattMaterial, paletteColours, recolour, solidGeometry, stepBehind } from '../solid/matt.ts';
import type { Solid } from '../solid/solid.ts';
import type { DrawnTrack } from '../way/drawnTrack.ts';
import type { WayMeasures } from './measures.ts';
import { paintedStrip, paintSleepers } from './paintedStrip.ts';
import { cutStretches, farStretch, nearStretch, type Stretch } from './stretch.ts';

/** From how many screen pixels a sleeper's pitch takes rails and sleepers are worth drawing as solids. */
const worthSleepers = 13;

/** Most stretches kept in detail; the one longest unseen goes first. */
const mostNear = 28;

const stageColours = paletteColours(wayFaces);
const lensColours = paletteColours(lensWayFaces);
const faintColours = paletteColours(faintFaces(wayFaces));
const inkColours = paletteColours(wayStrokes, 'ink');
const faintInkColours = paletteColours(faintStrokes(wayStrokes), 'ink');

interface Drawn {
  readonly faces: Mesh;
  readonly ink: Mesh;
  readonly geometries: readonly [BufferGeometry, BufferGeometry];
}

class DrawnStretch {
  readonly middle: Vec3;
  readonly far: Drawn;
  near: Drawn | null = null;
  /** Counts up each time it is shown in detail. */
  seen = 0;

  constructor(
    readonly owner: WayModel,
    readonly drawn: DrawnTrack,
    readonly stretch: Stretch,
    readonly breaks: readonly number[],
  ) {
    const point = {} as TrackPoint;
    trackPoint(drawn.track, (stretch.from + stretch.to) / 2, point);
    this.middle = [point.x, point.y, point.z];
    this.far = owner.draw(farStretch(drawn.track, stretch, owner.measures, breaks));
  }

  detail(): Drawn {
    this.near ??= this.owner.draw(nearStretch(this.drawn.track, this.stretch, this.owner.measures, this.breaks));
    return this.near;
  }
}

/** Trackbed and rails of every track on the stage, cut into stretches that show detail only where it can be made out. */
export class WayModel {
  readonly group = new Group();
  readonly measures: WayMeasures;
  private readonly stretches: DrawnStretch[];
  private readonly faces: ShaderMaterial;
  private readonly painted: ShaderMaterial;
  private readonly ink: ShaderMaterial;
  private clock = 0;
  private isFaint = false;

  constructor(railway: Railway, view: InkView) {
    this.measures = railway.measures;
    this.faces = mattMaterial(wayFaces);
    this.painted = paintedStrip(railway.measures);
    this.ink = inkMaterial(view, wayStrokes);
    this.stretches = railway.tracks.flatMap((drawn) => {
      const breaks = breakPlaces(drawn.track);
      return cutStretches(drawn.track.length).map((stretch) => new DrawnStretch(this, drawn, stretch, breaks));
    });
  }

  draw(solid: Solid): Drawn {
    const geometries = [solidGeometry(solid), inkGeometry(solid.strokes)] as const;
    const faces = new Mesh(geometries[0], solid.paint.length > 0 ? this.painted : this.faces);
    const ink = inkMesh(geometries[1], this.ink);
    this.group.add(faces, ink);
    if (this.isFaint) orderInk(this.group, true);
    return { faces, ink, geometries };
  }

  /** Draws something for one picture: the returned handle takes it away again. */
  drawOnce(solid: Solid): { remove(): void } {
    const drawn = this.draw(solid);
    return { remove: () => this.drop(drawn) };
  }

  /** Takes the colours of the lens or those of the stage. */
  underLens(lens: boolean): void {
    recolour(this.faces, lens ? lensColours : stageColours);
  }

  /** Draws it pale with dashed lines, behind another railway in the same place; or as it is. */
  faint(faint: boolean): void {
    this.isFaint = faint;
    for (const faces of [this.faces, this.painted]) {
      recolour(faces, faint ? faintColours : stageColours);
      stepBehind(faces, faint);
    }
    paintSleepers(this.painted, !faint);
    faintInk(this.ink, faint, faint ? faintInkColours : inkColours, true);
    orderInk(this.group, faint);
  }

  /** Chooses detail by how many screen pixels a metre takes at each stretch. */
  showAll(pixelsPerMetre: (place: Vec3, radius: number) => number): void {
    this.clock++;
    for (const piece of this.stretches) {
      const radius = (piece.stretch.to - piece.stretch.from) / 2;
      const near = pixelsPerMetre(piece.middle, radius) * this.measures.sleeperPitch > worthSleepers;
      this.show(piece, near ? 'near' : 'far');
    }
    this.forget();
  }

  /** Shows only what lies within `radius` (m) of a place, all of it in detail: what the lens sees. */
  showAround(place: Vec3, radius: number): void {
    this.clock++;
    for (const piece of this.stretches) {
      const reach = (piece.stretch.to - piece.stretch.from) / 2 + radius;
      const away = Math.hypot(piece.middle[0] - place[0], piece.middle[1] - place[1], piece.middle[2] - place[2]);
      this.show(piece, away < reach ? 'near' : 'none');
    }
  }

  private show(piece: DrawnStretch, as: 'near' | 'far' | 'none'): void {
    const near = as === 'near' ? piece.detail() : piece.near;
    if (as === 'near') piece.seen = this.clock;
    piece.far.faces.visible = as === 'far';
    piece.far.ink.visible = as === 'far';
    if (near === null) return;
    near.faces.visible = as === 'near';
    near.ink.visible = as === 'near';
  }

  private forget(): void {
    const kept = this.stretches.filter((piece) => piece.near !== null);
    if (kept.length <= mostNear) return;
    kept.sort((a, b) => b.seen - a.seen);
    for (const piece of kept.slice(mostNear)) {
      if (piece.near === null || piece.seen === this.clock) continue;
      this.drop(piece.near);
      piece.near = null;
    }
  }

  private drop(drawn: Drawn): void {
    this.group.remove(drawn.faces, drawn.ink);
    for (const geometry of drawn.geometries) geometry.dispose();
  }

  dispose(): void {
    for (const piece of this.stretches) {
      this.drop(piece.far);
      if (piece.near !== null) this.drop(piece.near);
    }
    this.faces.dispose();
    this.painted.dispose();
    this.ink.dispose();
  }
}

/** Chainages where the strip may break in grade or be propped: chords must not cut across them. */
function breakPlaces(track: Track): number[] {
  const { strip } = track.spec.profile;
  if (strip === undefined) return [];
  return [...strip.supports.map((support) => support.chainage), ...strip.hinges];
}
