import { plainElement } from '../plan/elementStretch.ts';
import { inMetres, TrackError } from '../problem.ts';
import { between } from './breaks.ts';
import { endCurvatures } from './chain.ts';
import { fewestPieces, MOST_PIECES, turnsBack } from './fewest.ts';
import { fitProfile } from './fitProfile.ts';
import type { AlignmentFit, FitOptions, MeasuredPlace } from './types.ts';

/** More places than this are thinned out by whoever measured them: the work grows with their number. */
const MOST_PLACES = 2000;

/** Places nearer than this are one, m. */
const SAME_PLACE = 1e-6;

/**
 * Straights, arcs and (when `eased`) clothoids along places measured in order, as few as were found, so that none lies further off
 * than the tolerance, m. Elements share their tangents; eased ones their curvature too. That there are no fewer is not proven.
 * Throws TrackError in words when there are too few or too many places, one is no number, they double back, or they scatter so far that no track follows them.
 */
export function fitAlignment(
  measured: readonly MeasuredPlace[],
  { tolerance, eased = false }: FitOptions,
): AlignmentFit {
  const refuse = (sentence: string): never => {
    throw new TrackError('bad-fit', sentence);
  };
  if (!(tolerance > 0 && Number.isFinite(tolerance)))
    refuse(`A tolerance of ${tolerance} m fits nothing: give a positive one.`);
  const wrong = measured.findIndex(({ x, y, z = 0 }) => ![x, y, z].every(Number.isFinite));
  if (wrong >= 0) refuse(`Place ${wrong + 1} is not at a finite distance.`);
  const places = measured.filter((place, i) => i === 0 || between(measured[i - 1], place) > SAME_PLACE);
  if (places.length < 2) refuse('An alignment needs at least two places apart from each other.');
  if (places.length > MOST_PLACES)
    refuse(`${places.length} places are more than the ${MOST_PLACES} that are fitted: thin them out.`);
  const back = turnsBack(places);
  if (back !== null)
    refuse(
      `The line doubles back at place ${back} of ${places.length}: give the places in their order along the track.`,
    );
  const fit = fewestPieces(places, tolerance, eased);
  if (fit === null) {
    return refuse(
      `More than ${MOST_PIECES} pieces would be needed within ${inMetres(tolerance)}: allow more, or fit a shorter stretch.`,
    );
  }
  const { chain, chainages, greatest, distances } = fit;
  const elements = chain.pieces.map((piece) => plainElement(piece.length, ...endCurvatures(chain, piece)));
  const length = chain.pieces.reduce((sum, piece) => sum + piece.length, 0);
  const heights = places.flatMap(({ z }, i) => (z === undefined ? [] : [{ chainage: chainages[i], height: z }]));
  const profile = heights.length === places.length ? fitProfile(heights, length, tolerance) : null;
  return {
    start: { x: chain.x, y: chain.y, heading: chain.heading },
    elements,
    length,
    chainages,
    distance: greatest,
    furthest: distances.indexOf(greatest),
    ...(profile && { profile: profile.points, heightDistance: profile.distance }),
  };
}
