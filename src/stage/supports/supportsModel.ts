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
  private readonly hangers = new Group();
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
    this.mark([]);
  }

  /** Marks supports by their track and number, and unmarks all others. */
  mark(supports: readonly { readonly trackId: string; readonly support: number }[]): void {
    const wanted = new Set(supports.map(({ trackId, support }) => `${trackId}:${support}`));
    const key = [...wanted].sort().join();
    if (key === this.marked) return;
    this.marked = key;
    this.clear();
    const solids = { plain: [emptySolid(), emptySolid()], marked: [emptySolid(), emptySolid()] } as const;
    for (const post of this.posts) {
      const named = wanted.has(`${post.trackId}:${post.index}`);
      const [bearers, hangers] = named ? solids.marked : solids.plain;
      drawPost(bearers, hangers, post, this.railway.measures, named);
    }
    for (const dress of ['plain', 'marked'] as const) {
      solids[dress].forEach((solid, i) => {
        const faces = solidGeometry(solid);
        const ink = inkGeometry(solid.strokes);
        const meshes = [new Mesh(faces, this.faces[dress]), inkMesh(ink, this.ink)];
        (i === 0 ? this.group : this.hangers).add(...meshes);
        this.owned.push(faces, ink);
      });
    }
    this.group.add(this.hangers);
  }

  /** Takes what is drawn under the lens, or what is drawn on the stage. */
  underLens(lens: boolean): void {
    recolour(this.faces.plain, lens ? lensColours : stageColours);
    // Rods in front of the joint would hide it.
    this.hangers.visible = !lens;
  }

  private clear(): void {
    this.group.clear();
    this.hangers.clear();
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
