import { Group, Mesh, type ShaderMaterial } from 'three';
import { type InkView, inkGeometry, inkMaterial, inkMesh } from '../ink/ink.ts';
import { lensWayFaces, markedFaces, wayFaces, wayStrokes } from '../palette.ts';
import type { Railway } from '../railway.ts';
import { mattMaterial, paletteColours, recolour, solidGeometry } from '../solid/matt.ts';
import { emptySolid } from '../solid/solid.ts';
import { drawPost } from './postSolid.ts';
import { type Post, posts } from './posts.ts';

const stageColours = paletteColours(wayFaces);
const lensColours = paletteColours(lensWayFaces);

/** All supports on the stage. Those that a failing finding names are drawn in its colour. */
export class SupportsModel {
  readonly group = new Group();
  readonly posts: readonly Post[];
  private readonly faces: { readonly plain: ShaderMaterial; readonly marked: ShaderMaterial };
  private readonly ink: ShaderMaterial;
  private owned: { dispose(): void }[] = [];
  private marked: string | null = null;

  constructor(
    private readonly railway: Railway,
    view: InkView,
  ) {
    this.posts = posts(railway.tracks, railway.tables, railway.measures);
    this.faces = { plain: mattMaterial(wayFaces), marked: mattMaterial(markedFaces) };
    this.ink = inkMaterial(view, wayStrokes);
    this.mark(null, []);
  }

  /** Marks supports of one track by their index, and unmarks all others. */
  mark(trackId: string | null, indices: readonly number[]): void {
    const key = `${trackId}:${indices.join()}`;
    if (key === this.marked) return;
    this.marked = key;
    this.clear();
    const plain = emptySolid();
    const marked = emptySolid();
    for (const post of this.posts) {
      const named = post.trackId === trackId && indices.includes(post.index);
      drawPost(named ? marked : plain, post, this.railway.measures, named);
    }
    for (const [solid, material] of [
      [plain, this.faces.plain],
      [marked, this.faces.marked],
    ] as const) {
      const faces = solidGeometry(solid);
      const ink = inkGeometry(solid.strokes);
      this.group.add(new Mesh(faces, material), inkMesh(ink, this.ink));
      this.owned.push(faces, ink);
    }
  }

  /** Takes the colours of the lens or those of the stage. */
  underLens(lens: boolean): void {
    recolour(this.faces.plain, lens ? lensColours : stageColours);
  }

  private clear(): void {
    this.group.clear();
    for (const one of this.owned) one.dispose();
    this.owned = [];
  }

  dispose(): void {
    this.clear();
    this.faces.plain.dispose();
    this.faces.marked.dispose();
    this.ink.dispose();
  }
}
