import { BufferAttribute, BufferGeometry, type Color, type Group, Mesh, ShaderMaterial, Vector2 } from 'three';
import { boundingSphere, paletteColours } from '../solid/matt.ts';
import { type Strokes, strokeCount } from './strokes.ts';

/** Size of the view being drawn, in pixels of the screen, and how many device pixels one is. Shared by all inks. */
export interface InkView {
  readonly size: { value: Vector2 };
  readonly ratio: { value: number };
  /** Multiplies all weights: more than 1 where the person asks for more contrast. */
  readonly heavier: { value: number };
  /** Metres that one screen pixel covers where the view looks: sets the length of dashes. */
  readonly metresPerPixel: { value: number };
}

export const newInkView = (): InkView => ({
  size: { value: new Vector2(1, 1) },
  ratio: { value: 1 },
  heavier: { value: 1 },
  metresPerPixel: { value: 0.001 },
});

/** How far ink is drawn in front of the face it lies on, as a share of its distance from the eye. */
const lift = 0.0004;

/**
 * Each stroke is four corners of a strip that keeps its width on the screen. A stroke that passes behind the eye is cut
 * at the near plane first; without that its far end would be thrown across the picture.
 */
const vertexShader = /* glsl */ `
attribute vec3 from;
attribute vec3 to;
attribute vec3 style;
attribute vec2 run;
uniform vec2 size;
uniform float ratio;
uniform float heavier;
uniform float weight;
uniform vec3 palette[12];
varying vec3 vColour;
varying float vAcross;
varying float vHalf;
varying float vRun;
void main() {
  // Corners in a row: start right, end right, end left, start left.
  int number = gl_VertexID & 3;
  vec2 corner = vec2(number == 1 || number == 2 ? 1.0 : 0.0, number < 2 ? -1.0 : 1.0);
  vec4 a = modelViewMatrix * vec4(from, 1.0);
  vec4 b = modelViewMatrix * vec4(to, 1.0);
  bool perspective = projectionMatrix[2][3] == -1.0;
  float runA = run.x;
  float runB = run.y;
  if (perspective) {
    float near = projectionMatrix[3][2] / (projectionMatrix[2][2] - 1.0);
    if (a.z > -near && b.z > -near) {
      gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
      return;
    }
    float cut = (-near - a.z) / (b.z - a.z);
    if (a.z > -near) {
      a = mix(a, b, cut);
      runA = mix(runA, runB, cut);
    } else if (b.z > -near) {
      b = mix(a, b, cut);
      runB = mix(runA, runB, cut);
    }
    a.xyz *= 1.0 - ${lift};
    b.xyz *= 1.0 - ${lift};
  } else {
    a.z += 0.00005;
    b.z += 0.00005;
  }
  vec4 clipA = projectionMatrix * a;
  vec4 clipB = projectionMatrix * b;
  vec2 screenA = clipA.xy / clipA.w * size * 0.5;
  vec2 screenB = clipB.xy / clipB.w * size * 0.5;
  vec2 along = screenB - screenA;
  float reach = length(along);
  along = reach > 1e-6 ? along / reach : vec2(1.0, 0.0);
  vec2 across = vec2(-along.y, along.x);
  vec4 clip = corner.x < 0.5 ? clipA : clipB;
  float worldPixels = style.y * projectionMatrix[1][1] / clip.w * size.y * 0.5;
  // A thing with a width of its own that has shrunk to a fraction of a pixel is drawn lighter: two rails stay two.
  float faint = style.y > 0.0 ? clamp(3.5 * worldPixels / ratio, 0.7, 1.0) : 1.0;
  float wide = max(style.x * weight * heavier * ratio * faint, worldPixels);
  float halfWidth = wide * 0.5;
  float spread = halfWidth + 0.75;
  float cap = min(halfWidth * 0.6, reach);
  vec2 shift = across * spread * corner.y + along * cap * (corner.x * 2.0 - 1.0);
  clip.xy += shift / (size * 0.5) * clip.w;
  vAcross = spread * corner.y;
  vHalf = halfWidth;
  vRun = corner.x < 0.5 ? runA : runB;
  vColour = palette[int(style.z + 0.5)];
  gl_Position = clip;
}`;

const fragmentShader = /* glsl */ `
uniform vec2 dash;
uniform float metresPerPixel;
uniform float opacity;
varying vec3 vColour;
varying float vAcross;
varying float vHalf;
varying float vRun;
void main() {
  float cover = clamp(vHalf + 0.5 - abs(vAcross), 0.0, 1.0) * min(1.0, 2.0 * vHalf);
  if (dash.y > 0.0) {
    float unit = exp2(floor(log2(metresPerPixel) + 0.5));
    float place = mod(vRun / unit, dash.x + dash.y);
    if (place > dash.x) discard;
  }
  gl_FragColor = vec4(vColour, cover * opacity);
}`;

export interface InkOptions {
  readonly weight?: number;
  readonly opacity?: number;
  /** On and off, screen pixels. */
  readonly dash?: readonly [number, number];
}

/** Ink that keeps its weight on the screen at every distance. */
export function inkMaterial(view: InkView, colours: readonly string[], options: InkOptions = {}): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader,
    fragmentShader,
    uniforms: {
      palette: { value: paletteColours(colours, 'ink') as Color[] },
      size: view.size,
      ratio: view.ratio,
      heavier: view.heavier,
      metresPerPixel: view.metresPerPixel,
      weight: { value: options.weight ?? 1 },
      opacity: { value: options.opacity ?? 1 },
      dash: { value: new Vector2(options.dash?.[0] ?? 0, options.dash?.[1] ?? 0) },
    },
    transparent: true,
    depthWrite: false,
  });
}

/** Repeats each row of `width` numbers for a stroke's four corners. */
function fourfold(rows: readonly number[], width: number): Float32Array {
  const out = new Float32Array(rows.length * 4);
  for (let row = 0; row * width < rows.length; row++) {
    for (let corner = 0; corner < 4; corner++) {
      for (let i = 0; i < width; i++) out[(row * 4 + corner) * width + i] = rows[row * width + i];
    }
  }
  return out;
}

/**
 * Strokes as a geometry with its bounds worked out. Four full vertices a stroke rather than instances: a renderer on
 * the processor draws every instance as a call of its own.
 */
export function inkGeometry(strokes: Strokes): BufferGeometry {
  const count = strokeCount(strokes);
  const geometry = new BufferGeometry();
  const index = new Uint32Array(6 * count);
  for (let i = 0; i < count; i++) index.set([4 * i, 4 * i + 1, 4 * i + 2, 4 * i, 4 * i + 2, 4 * i + 3], 6 * i);
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.setAttribute('from', new BufferAttribute(fourfold(strokes.from, 3), 3));
  geometry.setAttribute('to', new BufferAttribute(fourfold(strokes.to, 3), 3));
  geometry.setAttribute('style', new BufferAttribute(fourfold(strokes.style, 3), 3));
  geometry.setAttribute('run', new BufferAttribute(fourfold(strokes.run, 2), 2));
  geometry.boundingSphere = boundingSphere([...strokes.from, ...strokes.to]);
  return geometry;
}

/** Ink is drawn after all faces; that of a faint railway first, so that where two lie in the same place the strong line is seen. */
const inkOrder = 10;
const faintOrder = 9;

const noDash = new Vector2(0, 0);
const faintDash = new Vector2(5, 3);

/** Draws with faint ink, dashed if it is a line of the way, or with the colours given again. */
export function faintInk(material: ShaderMaterial, faint: boolean, colours: readonly Color[], dashed: boolean): void {
  material.uniforms.palette.value = colours;
  material.uniforms.dash.value = faint && dashed ? faintDash : noDash;
}

/** Puts all ink of a group before or after that of the strong railway. */
export function orderInk(group: Group, faint: boolean): void {
  group.traverse((one) => {
    if (one.renderOrder !== 0) one.renderOrder = faint ? faintOrder : inkOrder;
  });
}

export function inkMesh(geometry: BufferGeometry, material: ShaderMaterial): Mesh {
  const mesh = new Mesh(geometry, material);
  mesh.renderOrder = inkOrder;
  return mesh;
}
