import { inMetres, TrackError } from '../problem.ts';
import { PieceWriter } from '../profile/pieces.ts';
import type { HeightPieces, StripSpec, SupportDeparture } from '../types.ts';
import { type Beam, type BeamNode, writeBeam } from './beam.ts';
import { bridgeSteps, checkSteps, stepAt } from './stripSteps.ts';

/** A hinge this near a support, m, is at it: a micrometre, below any saw cut. */
export const HINGE_AT_SUPPORT = 1e-6;

/**
 * The departures of a strip bent over its supports, as pieces that go on straight beyond the outer supports.
 *
 * An Euler-Bernoulli beam: between nodes EI·y⁗ = -weight; y and y′ are continuous but at hinges; moment 0 at free ends and
 * hinges, slope 0 at clamped ends; at a hinge between supports the shear is continuous while the slope may break, and the
 * height steps where a step is given. A hinge at a support parts the strip into two beams that share that support. Without
 * sections the strip is weightless and of one stiffness, which then drops out. With no supports at all the departure is 0 everywhere.
 * Throws TrackError when supports do not rise, when there is only one, when hinges leave a piece that can swing, and when
 * steps, sections or loads are not where the strip can have them.
 */
export function bentStrip(strip: StripSpec): HeightPieces {
  const pieces = unbridgedStrip(strip);
  return strip.steps === undefined || strip.steps.length === 0 ? pieces : bridgeSteps(pieces, strip.steps);
}

/** The strip itself, with its steps as they are sawn: `bentStrip` without the rail that bridges them. */
export function unbridgedStrip(strip: StripSpec): HeightPieces {
  const { supports, sections = [], steps = [], loads = [] } = strip;
  supports.forEach(checkSupport);
  const hinges = [...new Set(strip.hinges)].sort((p, q) => p - q);
  if (supports.length === 0 && hinges.length === 0) {
    const level = new PieceWriter();
    level.add(0, 0, 0);
    return level.pieces();
  }
  if (supports.length < 2) {
    const sentence = `A strip needs at least two supports to hold it, and has ${supports.length}.`;
    throw new TrackError('too-few-supports', sentence);
  }
  for (const hinge of hinges) checkHinge(hinge, supports);
  checkSteps(steps, hinges);
  checkSections(strip);
  const writer = new PieceWriter();
  for (const beam of beamsBetweenHingedSupports(strip, hinges)) {
    refuseLoosePieces(beam);
    writeBeam(beam, sections, loads, strip.creep ?? 0, writer);
  }
  return writer.pieces();
}

/** Refuses sections that change within a span or are not in order, and loads that no strip carries. */
function checkSections({ supports, hinges, sections = [], loads = [], creep = 0 }: StripSpec): void {
  const nodes = [...supports.map((support) => support.chainage), ...hinges];
  sections.forEach(({ from, stiffness, weight }, index) => {
    if (!Number.isFinite(from + stiffness + weight) || !(stiffness > 0) || !(weight >= 0)) {
      const sentence = `Section ${index + 1} of the strip needs a positive stiffness and a weight of 0 or more.`;
      throw new TrackError('bad-section', sentence, from);
    }
    if (index === 0) return;
    if (!(from > sections[index - 1].from)) {
      throw new TrackError('bad-section', 'Sections of the strip must rise in chainage.', from);
    }
    const away = Math.min(...nodes.map((node) => Math.abs(node - from)));
    if (away > HINGE_AT_SUPPORT) {
      const sentence = `The strip changes at chainage ${inMetres(from)}, ${inMetres(away)} from the nearest support or joint: it must change at one.`;
      throw new TrackError('bad-section', sentence, from, away);
    }
  });
  if (!(creep >= 0) || !Number.isFinite(creep)) {
    throw new TrackError('bad-section', `Creep must be 0 or more times the sag, not ${creep}.`);
  }
  if (loads.length > 0 && sections.length === 0) {
    throw new TrackError('bad-load', 'A load needs a strip with a stiffness: give it a section.');
  }
  for (const { chainage, force } of loads) {
    const beyond = Math.max(supports[0].chainage - chainage, chainage - supports[supports.length - 1].chainage);
    if (!(beyond <= HINGE_AT_SUPPORT) || !Number.isFinite(force)) {
      const sentence = `A load at chainage ${inMetres(chainage)} needs a finite force and a place between the outermost supports.`;
      throw new TrackError('bad-load', sentence, chainage, beyond);
    }
  }
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

function beamsBetweenHingedSupports(strip: StripSpec, hinges: readonly number[]): Beam[] {
  const { supports, steps = [], clampedStart = false, clampedEnd = false } = strip;
  const beams: Beam[] = [];
  let beam: BeamNode[] = [];
  let h = 0;
  supports.forEach((support, i) => {
    while (h < hinges.length && hinges[h] < support.chainage - HINGE_AT_SUPPORT) {
      beam.push({ chainage: hinges[h], height: 0, hinge: true, step: stepAt(steps, hinges[h]) });
      h++;
    }
    const node = { chainage: support.chainage, height: support.departure, hinge: false, step: 0 };
    beam.push(node);
    let parted = false;
    while (h < hinges.length && hinges[h] <= support.chainage + HINGE_AT_SUPPORT) {
      parted = true;
      h++;
    }
    if (i + 1 === supports.length || (parted && i > 0)) {
      const last = i + 1 === supports.length;
      beams.push({ nodes: beam, clampedStart: clampedStart && beams.length === 0, clampedEnd: clampedEnd && last });
      beam = [{ ...node, height: node.height + stepAt(steps, node.chainage) }];
    }
  });
  return beams;
}

/**
 * Refuses a beam with a piece between hinges that can move without bending: one whose supports, and neighbours that can
 * themselves hold the hinge, number fewer than two.
 */
function refuseLoosePieces({ nodes: beam, clampedStart, clampedEnd }: Beam): void {
  const ends = [0, ...beam.flatMap((node, i) => (node.hinge ? [i] : [])), beam.length - 1];
  const pieces = ends.slice(1).map((to, i) => {
    const nodes = beam.slice(ends[i], to + 1);
    // A clamp holds the slope as well: it counts as one more support.
    const clamps = (clampedStart && i === 0 ? 1 : 0) + (clampedEnd && i + 2 === ends.length ? 1 : 0);
    const supports = nodes.filter((node) => !node.hinge).length + clamps;
    return { from: nodes[0], to: nodes[nodes.length - 1], supports };
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
      const name = (node: BeamNode): string =>
        `the ${node.hinge ? 'hinge' : 'support'} at chainage ${inMetres(node.chainage)}`;
      const rests = supports === 0 ? 'no support' : 'one support';
      const sentence = `Between ${name(from)} and ${name(to)} the strip has ${rests} and can swing: add a support or splice a joint.`;
      throw new TrackError('loose-strip', sentence, from.chainage, to.chainage - from.chainage);
    }
    heldFromRight = supports + (heldFromRight ? 1 : 0) >= 2;
  }
}
