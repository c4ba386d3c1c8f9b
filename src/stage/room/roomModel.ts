import { Group, Mesh } from 'three';
import { type InkView, inkGeometry, inkMaterial, inkMesh } from '../ink/ink.ts';
import { roomFaces, structureFaces, wayStroke, wayStrokes } from '../palette.ts';
import type { Railway } from '../railway.ts';
import { mattMaterial, solidGeometry } from '../solid/matt.ts';
import { prism } from '../solid/shapes.ts';
import { emptySolid, type Solid } from '../solid/solid.ts';
import { drawStructures } from './structureSolid.ts';
import { drawWalls, wallFace } from './wallSolid.ts';

const pen = { weight: 1, role: wayStroke.table };
const fine = { weight: 0.8, role: wayStroke.table };
const structurePen = { weight: 0.9, role: wayStroke.edge };

/** What reaches up to the ceiling is cut off at this height over the lowest board, m: higher than a deck, lower than the eye. */
const cutOverBoard = 0.3;

/** Flanks of something round meet without a line, but for four upright ones that give it a body. */
const roundEdge = (side: number): boolean => side % 12 === 0;

/** The room around the railway and what stands beside its tracks. */
export class RoomModel {
  /** Hidden under the lens, which looks at a joint from nearer than any wall. */
  readonly group = new Group();
  private readonly owned: { dispose(): void }[] = [];

  constructor(railway: Railway, view: InkView) {
    this.add(roomSolid(railway), roomFaces, view);
    const structures = emptySolid();
    drawStructures(structures, railway.structures, structurePen);
    this.add(structures, structureFaces, view);
  }

  private add(solid: Solid, faces: readonly string[], view: InkView): void {
    if (solid.strokes.from.length === 0) return;
    const geometry = solidGeometry(solid);
    const material = mattMaterial(faces);
    const lines = inkGeometry(solid.strokes);
    const ink = inkMaterial(view, wayStrokes);
    this.group.add(new Mesh(geometry, material), inkMesh(lines, ink));
    this.owned.push(geometry, material, lines, ink);
  }

  underLens(lens: boolean): void {
    this.group.visible = !lens;
  }

  dispose(): void {
    for (const one of this.owned) one.dispose();
  }
}

/** Walls and doors, and what stands on the floor. */
export function roomSolid({ room, floor, tables }: Pick<Railway, 'room' | 'floor' | 'tables'>): Solid {
  const solid = emptySolid();
  if (room.corners.length > 0) drawWalls(solid, room, floor, pen, fine);
  const ceiling = Math.min(...tables.map(({ top }) => top)) + cutOverBoard;
  for (const { outline, round, height } of room.obstacles) {
    const top = height === null ? Math.max(ceiling, floor + cutOverBoard) : floor + height;
    prism(
      solid,
      'z',
      outline,
      [floor, top],
      { flank: () => wallFace.side, end: wallFace.top, ...(round && { inked: roundEdge }) },
      pen,
    );
  }
  return solid;
}
