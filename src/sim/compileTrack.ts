import { asin, atan } from '../core/math/index.ts';
import {
  type BranchStart,
  branchStart,
  makeTrack,
  pieceHeight,
  railCentres,
  reverseTrack,
  stripMaterials,
  stripSection,
} from '../core/track/index.ts';
import type {
  CantPoint,
  CantSpec,
  GradePoint,
  LateralSpec,
  MeasuredSpec,
  StripSpec,
  Track,
  TrackSpec,
} from '../core/track/types.ts';
import {
  placedCants,
  placedSupports,
  placeMm,
  planElement,
  profileHeights,
  type SceneProfilePoint,
  type SceneTrack,
  startTurnout,
  stripJointsMm,
} from '../scene/index.ts';

const mm = 1e-3;

/** A track of the scene as the exact geometry in SI; a branch needs the tracks `earlier` in the file. Throws RangeError, naming the track, when it cannot be laid. */
export function compileTrack(file: SceneTrack, earlier: ReadonlyMap<string, Track> = new Map()): Track {
  try {
    const own = file.alignment.map((_, index) => planElement(file, index));
    const branch = branchOf(file, earlier);
    const heights = profileHeights(file);
    const points = file.profile.map((point, index) => gradePoint(point, heights[index].atMm, heights[index].heightMm));
    const strip = stripOf(file);
    const cant = cantOf(file, branch);
    const lean = leanOf(file, branch);
    const lateral = lateralOf(file);
    return makeTrack({
      start: branch?.start ?? roomStart(file),
      elements: branch === null ? own : [...branch.elements, ...own],
      profile: {
        points: branch === null ? points : [heelPoint(branch), ...points],
        ...(strip && { strip: branch === null ? strip : fromHeel(strip, branch) }),
        ...(file.measured && { measured: measuredOf(file, file.measured) }),
        ...(branch && { held: [branch.held] }),
      },
      ...(cant && { cant }),
      ...(lean && { lean }),
      ...(lateral && { lateral }),
    });
  } catch (error) {
    throw new RangeError(`Track "${file.id}": ${error instanceof Error ? error.message : String(error)}`, {
      cause: error,
    });
  }
}

function roomStart({ start }: SceneTrack): TrackSpec['start'] {
  if ('branchOf' in start) throw new RangeError('A branch starts on its main track.');
  return { x: start.xMm * mm, y: start.yMm * mm, heading: (start.headingDeg * Math.PI) / 180 };
}

/** Where a branch leaves its main track; null for a track of its own. */
function branchOf(file: SceneTrack, earlier: ReadonlyMap<string, Track>): BranchStart | null {
  const turnout = startTurnout(file);
  if (turnout === null || !('branchOf' in file.start)) return null;
  const { branchOf: id, atMm, towards } = file.start;
  const main = earlier.get(id);
  if (main === undefined) throw new RangeError(`it branches off "${id}", which is no track before it in the file`);
  if (towards === 'end') return branchStart(main, atMm * mm, turnout);
  return branchStart(reverseTrack(main), main.length - atMm * mm, turnout);
}

/** The heights of a branch begin where its turnout ends: as high as the main track there. */
function heelPoint({ held }: BranchStart): GradePoint {
  return { chainage: held.to, height: pieceHeight(held.pieces, held.to) };
}

/** A branch's strip starts on the sleepers of its turnout; the supports of the file keep their numbers. */
const fromHeel = (strip: StripSpec, { held }: BranchStart): StripSpec => ({
  ...strip,
  supports: [
    { chainage: held.to, departure: 0, number: -1 },
    ...strip.supports.map((support, number) => ({ ...support, number })).filter((one) => one.chainage > held.to + mm),
  ],
});

function stripOf(file: SceneTrack): StripSpec | null {
  const supports = placedSupports(file);
  if (supports.length === 0) return null;
  const steps = (file.stripJoints ?? []).flatMap((joint) =>
    joint.stepMm === undefined
      ? []
      : [
          {
            chainage: placeMm(file, joint) * mm,
            rise: joint.stepMm * mm,
            over: (joint.bridgedMm ?? usualBridgeMm) * mm,
          },
        ],
  );
  const bare: StripSpec = {
    supports: supports.map(({ atMm, offMm }) => ({ chainage: atMm * mm, departure: offMm * mm })),
    hinges: stripJointsMm(file).map((atMm) => atMm * mm),
    ...(steps.length > 0 && { steps: steps.sort((p, q) => p.chainage - q.chainage) }),
  };
  if (file.strip === undefined) return bare;
  const { material, thicknessMm, widthMm, trackGPerM = 0, settled = false } = file.strip;
  const wood = stripMaterials[material];
  return {
    ...bare,
    sections: [stripSection(wood, thicknessMm * mm, widthMm * mm, trackGPerM / 1000)],
    creep: settled ? wood.creep : 0,
  };
}

/** Rail spans a step over about four sleepers of a small scale, mm (an assumption). */
const usualBridgeMm = 40;

function measuredOf(file: SceneTrack, { between, heights }: NonNullable<SceneTrack['measured']>): MeasuredSpec {
  return {
    between,
    heights: heights.map((one) => ({ chainage: placeMm(file, one) * mm, height: one.heightMm * mm })),
    hinges: stripJointsMm(file).map((atMm) => atMm * mm),
  };
}

function lateralOf(file: SceneTrack): LateralSpec | null {
  if (file.rails === undefined) return null;
  const { offsets = [], joints = [], kinks = [] } = file.rails;
  return {
    points: offsets.map((one) => ({ chainage: placeMm(file, one) * mm, offset: one.leftMm * mm })),
    hinges: joints.map((one) => placeMm(file, one) * mm),
    kinks: kinks.map((one) => ({
      chainage: placeMm(file, one) * mm,
      turn: (one.turnDeg * Math.PI) / 180,
      reach: one.reachMm * mm,
    })),
  };
}

/** Cant of a track: over a branch's turnout the main track's, then its own. */
function cantOf(file: SceneTrack, branch: BranchStart | null): CantSpec | null {
  const over = branch?.cant ?? [];
  if (file.cant === undefined) return over.length === 0 ? null : { points: over, lever: 0 };
  const { gaugeMm, packed } = file.cant;
  const apartMm = railCentres(gaugeMm);
  const own = placedCants(file).cants.map(({ atMm, cantMm }) => ({
    chainage: atMm * mm,
    cant: asin(cantMm / apartMm),
  }));
  const last = over[over.length - 1]?.chainage ?? Number.NEGATIVE_INFINITY;
  return {
    points: [...over, ...own.filter((point) => point.chainage > last)],
    lever: packed === 'outer' ? (apartMm * mm) / 2 : 0,
  };
}

/** How the deck as built leans beside its plan; over a branch's turnout it is the main track that leans. */
function leanOf(file: SceneTrack, branch: BranchStart | null): CantPoint[] | null {
  if (file.crossLevels === undefined) return null;
  const own = file.crossLevels.map((place) => ({
    chainage: placeMm(file, place) * mm,
    cant: atan(place.offPercent / 100),
  }));
  if (branch === null) return own;
  const { to } = branch.held;
  return [{ chainage: to, cant: 0 }, ...own.filter(({ chainage }) => chainage > to + mm)];
}

function gradePoint(point: SceneProfilePoint, atMm: number, heightMm: number): GradePoint {
  const place = { chainage: atMm * mm, height: heightMm * mm };
  if (point.verticalCurveLengthMm !== undefined)
    return { ...place, curve: { length: point.verticalCurveLengthMm * mm } };
  if (point.verticalCurveRadiusMm !== undefined)
    return { ...place, curve: { radius: point.verticalCurveRadiusMm * mm } };
  return place;
}
