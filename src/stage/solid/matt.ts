import { BufferAttribute, BufferGeometry, Color, DoubleSide, FrontSide, ShaderMaterial, Sphere, Vector3 } from 'three';
import { type ColourUse, themed } from '../theme.ts';
import type { Solid } from './solid.ts';

/** Most roles a palette may have; the shader's array has this fixed size. */
export const paletteSize = 12;

/**
 * How much lighter or darker a face becomes by which way it looks, in the room's axes: daylight from the south-west.
 * Only the horizontal part counts, so that tops keep the exact colour of the palette.
 */
export const daylight = new Vector3(-0.035, -0.05, 0);

const vertexShader = /* glsl */ `
attribute float role;
uniform vec3 palette[${paletteSize}];
uniform vec3 daylight;
varying vec3 vColour;
void main() {
  vec3 facing = normalize(mat3(modelMatrix) * normal);
  vColour = palette[int(role + 0.5)] * (1.0 + dot(facing, daylight) + 0.02 * min(facing.z, 0.0));
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`;

const fragmentShader = /* glsl */ `
varying vec3 vColour;
void main() {
  gl_FragColor = vec4(vColour, 1.0);
}`;

/** A palette as the list a shader takes, in the theme's colours. */
export function paletteColours(colours: readonly string[], use: ColourUse = 'face'): Color[] {
  const list = colours.map((hex) => themed(hex, use));
  while (list.length < paletteSize) list.push(new Color(0, 0, 0));
  return list;
}

/** A matt surface: each face has its palette's colour, a touch lighter towards the window. */
export function mattMaterial(colours: readonly string[], bothSides = false): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader,
    fragmentShader,
    uniforms: { palette: { value: paletteColours(colours) }, daylight: { value: daylight } },
    side: bothSides ? DoubleSide : FrontSide,
    // Faces step back a little in depth so that the ink on their edges wins.
    polygonOffset: true,
    polygonOffsetFactor: stepBack.factor,
    polygonOffsetUnits: stepBack.units,
  });
}

/** How far faces step back in depth, and those of a faint railway where another lies in the same place. */
const stepBack = { factor: 1, units: 2 } as const;
const faintStepBack = { factor: 3, units: 12 } as const;

/** Puts a surface behind another that lies in the same place, or beside it again. */
export function stepBehind(material: ShaderMaterial, behind: boolean): void {
  const { factor, units } = behind ? faintStepBack : stepBack;
  material.polygonOffsetFactor = factor;
  material.polygonOffsetUnits = units;
}

/** Gives a matt surface other colours. The list is made once by `paletteColours` and shared. */
export function recolour(material: ShaderMaterial, colours: readonly Color[]): void {
  material.uniforms.palette.value = colours;
}

/** The faces of a solid as a geometry with its bounds worked out. */
export function solidGeometry(solid: Solid): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(solid.position), 3));
  geometry.setAttribute('normal', new BufferAttribute(new Float32Array(solid.normal), 3));
  geometry.setAttribute('role', new BufferAttribute(new Float32Array(solid.role), 1));
  if (solid.paint.length > 0) {
    geometry.setAttribute('paint', new BufferAttribute(new Float32Array(solid.paint), 2));
  }
  geometry.setIndex(new BufferAttribute(new Uint32Array(solid.index), 1));
  geometry.boundingSphere = boundingSphere(solid.position);
  return geometry;
}

/** Smallest axis-parallel box's sphere around points given as x, y, z in a row. */
export function boundingSphere(points: ArrayLike<number>): Sphere {
  const low = new Vector3(Infinity, Infinity, Infinity);
  const high = new Vector3(-Infinity, -Infinity, -Infinity);
  const at = new Vector3();
  for (let i = 0; i < points.length; i += 3) {
    at.set(points[i], points[i + 1], points[i + 2]);
    low.min(at);
    high.max(at);
  }
  if (points.length === 0) return new Sphere(new Vector3(), 0);
  return new Sphere(low.clone().add(high).multiplyScalar(0.5), low.distanceTo(high) / 2);
}
