import {
  DataTexture,
  type Group,
  LinearFilter,
  Mesh,
  PlaneGeometry,
  RedFormat,
  ShaderMaterial,
  type Texture,
} from 'three';
import { type InkView, inkGeometry, inkMaterial, inkMesh } from '../ink/ink.ts';
import { paper, wayStroke, wayStrokes } from '../palette.ts';
import type { Railway } from '../railway.ts';
import { mattMaterial, solidGeometry } from '../solid/matt.ts';
import { box } from '../solid/shapes.ts';
import { emptySolid } from '../solid/solid.ts';
import { themed } from '../theme.ts';
import { shadowMask } from './shadow.ts';
import type { TableTop } from './tableTop.ts';

/** Grid of the table, m. */
export const gridPitch = 0.25;

/** How much of the shadow's colour its deepest place takes. */
const shadowDepth = 0.11;

const vertexShader = /* glsl */ `
varying vec2 vPlace;
varying vec2 vUv;
void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  vPlace = world.xy;
  vUv = uv;
  gl_Position = projectionMatrix * viewMatrix * world;
}`;

const fragmentShader = /* glsl */ `
uniform vec3 ground;
uniform vec3 grid;
uniform vec3 shade;
uniform float pitch;
uniform float depth;
uniform float ratio;
uniform sampler2D mask;
varying vec2 vPlace;
varying vec2 vUv;
void main() {
  vec2 cell = vPlace / pitch;
  vec2 slope = fwidth(cell);
  vec2 away = abs(fract(cell + 0.5) - 0.5) / slope;
  vec2 cover = clamp(0.5 * ratio + 0.5 - away, 0.0, 1.0) * (1.0 - smoothstep(0.12, 0.4, slope));
  vec3 colour = mix(ground, grid, 0.85 * max(cover.x, cover.y));
  colour = mix(colour, shade, depth * texture2D(mask, vUv).r);
  gl_FragColor = vec4(colour, 1.0);
}`;

/** The boards with grid and shadow, and their inked edges. Returns what must be disposed of. */
export function addTables(group: Group, railway: Railway, view: InkView): { dispose(): void }[] {
  const owned: { dispose(): void }[] = [];
  const sides = emptySolid();
  for (const table of railway.tables) {
    const { x, y, top, thickness } = table;
    const pen = { weight: 1, role: wayStroke.table };
    box(sides, x, y, [top - thickness, top - 0.0005], { top: 0, side: 1, end: 2, under: 2 }, pen);
    const material = topMaterial(shadowTexture(railway, table), view);
    const geometry = new PlaneGeometry(x[1] - x[0], y[1] - y[0]);
    const mesh = new Mesh(geometry, material);
    mesh.position.set((x[0] + x[1]) / 2, (y[0] + y[1]) / 2, top);
    group.add(mesh);
    owned.push(geometry, material, material.uniforms.mask.value as Texture);
  }
  const geometry = solidGeometry(sides);
  const material = mattMaterial([paper.table, paper.tableSide, paper.tableEnd]);
  const lines = inkGeometry(sides.strokes);
  const ink = inkMaterial(view, wayStrokes);
  group.add(new Mesh(geometry, material), inkMesh(lines, ink));
  owned.push(geometry, material, lines, ink);
  return owned;
}

function topMaterial(mask: Texture, view: InkView): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader,
    fragmentShader,
    uniforms: {
      ground: { value: themed(paper.table, 'face') },
      grid: { value: themed(paper.grid, 'grid') },
      shade: { value: themed(paper.shadow, 'face') },
      pitch: { value: gridPitch },
      depth: { value: shadowDepth },
      ratio: view.ratio,
      mask: { value: mask },
    },
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 2,
  });
}

function shadowTexture(railway: Railway, table: TableTop): Texture {
  const { width, height, data } = shadowMask(railway.tracks, railway.measures.stripWidth, table);
  const texture = new DataTexture(data, width, height, RedFormat);
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearFilter;
  // Rows of one byte a cell are not padded to four.
  texture.unpackAlignment = 1;
  texture.needsUpdate = true;
  return texture;
}
