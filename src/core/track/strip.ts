import { solveTridiagonal } from '../math/index.ts';
import { CubicWriter } from './cubic.ts';
import { inMetres, TrackError } from './problem.ts';
import type { CubicPieces, StripSpec, SupportDeparture } from './types.ts';

/** A hinge this near a support, m, is at it: a micrometre, below any saw cut. */
const HINGE_AT_SUPPORT = 1e-6;

/** A point of the strip: a support with its height given, or a hinge between supports with its moment known to be 0. */
interface Node {
  readonly chainage: number;
  readonly height: number;
  readonly hinge: boolean;
}

/**
 * The departures of a strip bent over its supports, as cubic pieces that go on straight beyond the outer supports.
 *
 * A weightless Euler-Bernoulli beam of one stiffness: between nodes y″ is linear, y and y′ are continuous, y″ = 0 at free
 * ends and hinges, and at a hinge between supports the shear y‴ is continuous while the slope may break. A hinge at a
 * support parts the strip into two beams that share that height. With no supports at all the departure is 0 everywhere.
 * Throws TrackError when supports do not rise, when there is only one, or when hinges leave a piece that can swing.
 */
export function bentStrip(strip: StripSpec): CubicPieces {
  const supports = strip.supports;
  supports.forEach(checkSupport);
  const hinges = [...new Set(strip.hinges)].sort((p, q) => p - q);
  if (supports.length === 0 && hinges.length === 0) {
    const level = new CubicWriter();
    level.add(0, 0, 0);
    return level.pieces();
  }
  if (supports.length < 2) {
    const sentence = `A strip needs at least two supports to hold it, and has ${supports.length}.`;
    throw new TrackError('too-few-supports', sentence);
  }
  for (const hinge of hinges) checkHinge(hinge, supports);
  const writer = new CubicWriter();
  for (const beam of beamsBetweenHingedSupports(supports, hinges)) {
    refuseLoosePieces(beam);
    writeBeam(beam, writer);
  }
  return writer.pieces();
}

function checkSupport(support: SupportDeparture, index: number, supports: readonly SupportDeparture[]): void {
  if (!Number.isFinite(support.chainage + support.departure)) {
    throw new TrackError('bad-support', `Support ${index + 1} needs a finite chainage and departure.`);
  }
  if (index > 0 && !(support.chainage - supports[index - 1].chainage > HINGE_AT_SUPPORT)) {
    const at = inMetres(support.chainage);
    const back = supports[index - 1].chainage - support.chainage;
    const sentence = `Supports must rise in chainage: the one at ${at} comes after one at ${inMetres(supports[index - 1].chainage)}.`;
    throw new TrackError('supports-not-rising', sentence, support.chainage, back);
  }
}

function checkHinge(hinge: number, supports: readonly SupportDeparture[]): void {
  if (!Number.isFinite(hinge)) throw new TrackError('bad-hinge', 'A hinge of the strip needs a finite chainage.');
  const beyond = Math.max(supports[0].chainage - hinge, hinge - supports[supports.length - 1].chainage);
  if (beyond > HINGE_AT_SUPPORT) {
    const sentence = `The hinge at chainage ${inMetres(hinge)} lies ${inMetres(beyond)} beyond the outermost support: nothing holds the strip past it.`;
    throw new TrackError('loose-strip', sentence, hinge, beyond);
  }
}

function beamsBetweenHingedSupports(supports: readonly SupportDeparture[], hinges: readonly number[]): Node[][] {
  const beams: Node[][] = [];
  let beam: Node[] = [];
  let h = 0;
  supports.forEach((support, i) => {
    while (h < hinges.length && hinges[h] < support.chainage - HINGE_AT_SUPPORT) {
      beam.push({ chainage: hinges[h], height: 0, hinge: true });
      h++;
    }
    const node = { chainage: support.chainage, height: support.departure, hinge: false };
    beam.push(node);
    let parted = false;
    while (h < hinges.length && hinges[h] <= support.chainage + HINGE_AT_SUPPORT) {
      parted = true;
      h++;
    }
    if (i + 1 === supports.length || (parted && i > 0)) {
      beams.push(beam);
      beam = [node];
    }
  });
  return beams;
}

/**
 * Refuses a beam with a piece between hinges that can move without bending: one whose supports, and neighbours that can
 * themselves hold the hinge, number fewer than two.
 */
function refuseLoosePieces(beam: readonly Node[]): void {
  const ends = [0, ...beam.flatMap((node, i) => (node.hinge ? [i] : [])), beam.length - 1];
  const pieces = ends.slice(1).map((to, i) => {
    const nodes = beam.slice(ends[i], to + 1);
    return { from: nodes[0], to: nodes[nodes.length - 1], supports: nodes.filter((node) => !node.hinge).length };
  });
  const heldFromLeft: boolean[] = [];
  for (const [i, piece] of pieces.entries()) {
    heldFromLeft.push(piece.supports + (i > 0 && heldFromLeft[i - 1] ? 1 : 0) >= 2);
  }
  let heldFromRight = false;
  for (let i = pieces.length - 1; i >= 0; i--) {
    const { from, to, supports } = pieces[i];
    const hold = supports + (i > 0 && heldFromLeft[i - 1] ? 1 : 0) + (heldFromRight ? 1 : 0);
    if (hold < 2) {
      const name = (node: Node): string =>
        `the ${node.hinge ? 'hinge' : 'support'} at chainage ${inMetres(node.chainage)}`;
      const rests = supports === 0 ? 'no support' : 'one support';
      const sentence = `Between ${name(from)} and ${name(to)} the strip has ${rests} and can swing: add a support or splice a joint.`;
      throw new TrackError('loose-strip', sentence, from.chainage, to.chainage - from.chainage);
    }
    heldFromRight = supports + (heldFromRight ? 1 : 0) >= 2;
  }
}

/**
 * Solves one beam. The unknown of a support is its y″ (0 at the ends), of a hinge its height; the equation of a support
 * says that the slope is continuous, of a hinge that the shear is. Each touches only its neighbours.
 */
function writeBeam(beam: readonly Node[], writer: CubicWriter): void {
  const n = beam.length;
  const lower = new Float64Array(n);
  const diagonal = new Float64Array(n).fill(1);
  const upper = new Float64Array(n);
  const right = new Float64Array(n);
  for (let i = 1; i + 1 < n; i++) {
    const [before, node, after] = [beam[i - 1], beam[i], beam[i + 1]];
    const left = node.chainage - before.chainage;
    const ahead = after.chainage - node.chainage;
    if (node.hinge) {
      diagonal[i] = 0;
      lower[i] = before.hinge ? 0 : 1 / left;
      upper[i] = after.hinge ? 0 : 1 / ahead;
    } else {
      diagonal[i] = (left + ahead) / 3;
      right[i] = -node.height * (1 / left + 1 / ahead);
      if (before.hinge) lower[i] = -1 / left;
      else {
        lower[i] = left / 6;
        right[i] += before.height / left;
      }
      if (after.hinge) upper[i] = -1 / ahead;
      else {
        upper[i] = ahead / 6;
        right[i] += after.height / ahead;
      }
    }
  }
  const unknown = solveTridiagonal(lower, diagonal, upper, right);
  const height = beam.map((node, i) => (node.hinge ? unknown[i] : node.height));
  const bend = beam.map((node, i) => (node.hinge ? 0 : unknown[i]));
  // The straight run-off of the beam before this one ends where this one starts.
  if (!writer.isEmpty) writer.dropLast();
  for (let i = 0; i + 1 < n; i++) {
    const span = beam[i + 1].chainage - beam[i].chainage;
    const rise = (height[i + 1] - height[i]) / span;
    const slope = rise - (span * (2 * bend[i] + bend[i + 1])) / 6;
    if (writer.isEmpty) writer.add(beam[0].chainage, height[0], slope);
    writer.add(beam[i].chainage, height[i], slope, bend[i] / 2, (bend[i + 1] - bend[i]) / (6 * span));
    if (i + 2 === n) writer.add(beam[n - 1].chainage, height[n - 1], rise + (span * (bend[i] + 2 * bend[i + 1])) / 6);
  }
}
