import { cos, sin } from '../math/index.ts';
import { makeTrack, type PlanElement, railAt, type Track, trackPoint } from '../track/index.ts';
import { flatRing } from './flatRing.ts';
import { nestedPitch, ringSector } from './ringSector.ts';

/** Pieces that are sawn alike, one element of a track after another. Lengths in m, angles in rad. */
export interface CutPieces {
  /** The element they make up, from 0, and its chainages. */
  readonly element: number;
  readonly from: number;
  readonly to: number;
  readonly shape: 'straight' | 'sector' | 'easement';
  readonly count: number;
  /** The least rectangle that each comes out of. */
  readonly blank: { readonly length: number; readonly width: number };
  /** From one to the next where several lie behind one another on a sheet. */
  readonly pitch: number;
  /** Of a sector: radius of its middle lying flat, its angle, chords and mitre. */
  readonly sector?: {
    readonly radius: number;
    readonly angle: number;
    readonly innerChord: number;
    readonly outerChord: number;
    readonly mitre: number;
  };
  /** Of easements, which are all different: for each piece the two edges set out from the straight line between the ends of its middle. */
  readonly ordinates?: readonly (readonly Ordinate[])[];
  /** Where they butt against each other and, the last of them, against the next element's. */
  readonly cuts: readonly Cut[];
}

/** A butt between two pieces: its chainage, m, and whether it falls within a vertical curve, which it would make a kink of. */
export interface Cut {
  readonly chainage: number;
  readonly rounding: boolean;
}

/** Edges of a piece at one place along the line between the ends of its middle, m; left positive. */
export interface Ordinate {
  readonly along: number;
  readonly left: number;
}

/** What pieces are sawn from, m: the sheet, the saw's kerf, and the longest curved piece wanted; straight ones are as long as the sheet allows. */
export interface SheetOfWood {
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
  readonly longest: number;
}

/** Edges of an easement are set out this often, m: its chord then departs from the edge by s²/8R, 0.8 mm at 400 mm radius. */
const setOutEvery = 0.05;

/** More pieces than this to an element mean a sheet that is too small for the strip. */
const mostPieces = 400;

/** A rounding slower than this, 1/m, is none. */
const straightEnough = 1e-9;

/** A cut this near the end of the track, m, is its end. */
const endTolerance = 1e-6;

/**
 * The pieces that a strip `width` wide, m, is made of, element by element: as few to each as the sheet allows, all of an element alike in length.
 * The track is the planned one. Throws RangeError where the strip does not fit on the sheet.
 */
export function cutPieces(track: Track, width: number, sheet: SheetOfWood): CutPieces[] {
  const { elements, startChainage } = track.plan;
  return elements.flatMap((element, index): CutPieces[] => {
    if (element.length === 0) return [];
    const from = startChainage[index];
    const to = from + element.length;
    const slant = (railAt(track, to) - railAt(track, from)) / element.length;
    for (let count = 1; count <= mostPieces; count++) {
      const piece = alike(element, slant, width, sheet.kerf, count);
      if (piece === null || !fits(piece, sheet)) continue;
      return [{ element: index, from, to, count, cuts: cutsOf(track, from, to, count), ...piece }];
    }
    throw new RangeError(
      `A strip ${Math.round(width * 1e3)} mm wide does not come out of a sheet ${Math.round(sheet.length * 1e3)} by ${Math.round(sheet.width * 1e3)} mm.`,
    );
  });
}

const fits = ({ shape, blank }: Piece, sheet: SheetOfWood): boolean =>
  blank.length <= sheet.length && blank.width <= sheet.width && (shape === 'straight' || blank.length <= sheet.longest);

/** Where the pieces of an element meet, and where its last meets the next element. */
function cutsOf(track: Track, from: number, to: number, count: number): Cut[] {
  return Array.from({ length: count }, (_, i) => from + ((to - from) * (i + 1)) / count)
    .filter((chainage) => chainage < track.length - endTolerance)
    .map((chainage) => ({
      chainage,
      rounding: Math.abs(trackPoint(track, chainage).verticalCurvature) > straightEnough,
    }));
}

type Piece = Pick<CutPieces, 'shape' | 'blank' | 'pitch' | 'sector' | 'ordinates'>;

/** An element in `count` pieces; null where they would bend through more than half a ring each. `slant` is rail over plan distance. */
function alike(element: PlanElement, slant: number, width: number, kerf: number, count: number): Piece | null {
  const length = (element.length * slant) / count;
  const { startCurvature, endCurvature } = element;
  if (startCurvature === 0 && endCurvature === 0) {
    return { shape: 'straight', blank: { length, width }, pitch: width + kerf };
  }
  if (startCurvature === endCurvature) {
    const { radius } = flatRing(1 / Math.abs(startCurvature), Math.sqrt(Math.max(0, slant * slant - 1)));
    if (length / radius > Math.PI) return null;
    const { angle, innerChord, outerChord, mitre, blank, ...rest } = ringSector(radius, width, length / radius);
    const pitch = nestedPitch({ angle, innerChord, outerChord, mitre, blank, ...rest }, kerf);
    return { shape: 'sector', blank, pitch, sector: { radius, angle, innerChord, outerChord, mitre } };
  }
  const pieces = Array.from({ length: count }, (_, i) => easementPiece(element, i / count, (i + 1) / count, width));
  const blank = {
    length: Math.max(...pieces.map((one) => one.length)),
    width: Math.max(...pieces.map((one) => one.width)),
  };
  return { shape: 'easement', blank, pitch: blank.width + kerf, ordinates: pieces.map((one) => one.ordinates) };
}

/** Part of an easement, lying flat, from the straight line between its ends. What the grade adds to its length, under a tenth of a per cent, is left out. */
function easementPiece(
  { length, startCurvature, endCurvature }: PlanElement,
  fromShare: number,
  toShare: number,
  width: number,
): { length: number; width: number; ordinates: Ordinate[] } {
  const curvature = (share: number): number => startCurvature + share * (endCurvature - startCurvature);
  const flat = makeTrack({
    start: { x: 0, y: 0, heading: 0 },
    elements: [
      {
        kind: 'transition',
        length: length * (toShare - fromShare),
        startCurvature: curvature(fromShare),
        endCurvature: curvature(toShare),
      },
    ],
    profile: { points: [{ chainage: 0, height: 0 }] },
  });
  const end = trackPoint(flat, flat.length);
  const chord = Math.sqrt(end.x * end.x + end.y * end.y);
  const [ux, uy] = [end.x / chord, end.y / chord];
  const ordinates: Ordinate[] = [];
  const steps = Math.max(2, Math.ceil(flat.length / setOutEvery));
  for (const side of [1, -1]) {
    for (let i = 0; i <= steps; i++) {
      const { x, y, heading } = trackPoint(flat, (flat.length * i) / steps);
      const [ex, ey] = [x - (side * width * sin(heading)) / 2, y + (side * width * cos(heading)) / 2];
      ordinates.push({ along: ex * ux + ey * uy, left: ey * ux - ex * uy });
    }
  }
  const [along, left] = [ordinates.map((one) => one.along), ordinates.map((one) => one.left)];
  return {
    length: Math.max(...along) - Math.min(...along),
    width: Math.max(...left) - Math.min(...left),
    ordinates,
  };
}
