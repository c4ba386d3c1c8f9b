import { atan } from '../math/index.ts';

/**
 * Whether a worm cannot be driven back by its wheel: its lead angle (rad) is below the friction angle of its faces, arctan μ. Source:
 * equilibrium of a screw, any textbook of machine elements.
 */
export const wormLocks = (lead: number, friction: number): boolean => lead < atan(friction);
