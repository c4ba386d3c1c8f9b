export { clamp } from './clamp.ts';
export { asin, asinh, atan, atan2, cos, hypot, log, sin, square, tan } from './elementary.ts';
export { exp } from './exponential.ts';
export { type Fresnel, fresnel } from './fresnel.ts';
export { gaussLegendre, integrate, type QuadratureRule } from './quadrature.ts';
export { type SeededRandom, seededRandom } from './random.ts';
export { brent, newton } from './roots.ts';
export { solveTridiagonal } from './tridiagonal.ts';
export { along, cross, distance, dot, subtract, type Vec3 } from './vec3.ts';
