import { ShaderMaterial, Vector4 } from 'three';
import { wayFace, wayFaces } from '../palette.ts';
import { daylight, paletteColours, paletteSize } from '../solid/matt.ts';
import { themed } from '../theme.ts';
import type { WayMeasures } from './measures.ts';

/** Vertices that are not painted carry a distance left that lies outside every sleeper, m. */
export const unpainted: readonly [number, number] = [0, 1000];

const vertexShader = /* glsl */ `
attribute float role;
attribute vec2 paint;
uniform vec3 palette[${paletteSize}];
uniform vec3 daylight;
varying vec3 vColour;
varying vec2 vPaint;
void main() {
  vec3 facing = normalize(mat3(modelMatrix) * normal);
  vColour = palette[int(role + 0.5)] * (1.0 + dot(facing, daylight) + 0.02 * min(facing.z, 0.0));
  vPaint = paint;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`;

/** Sleepers as even bars, softened by how much of one a pixel covers; too fine to be told apart, they are a tint. */
const fragmentShader = /* glsl */ `
uniform vec3 sleeper;
uniform vec4 sizes;
varying vec3 vColour;
varying vec2 vPaint;
void main() {
  vec3 colour = vColour;
  if (abs(vPaint.y) < sizes.y) {
    float place = vPaint.x / sizes.x;
    float blur = fwidth(place);
    float share = sizes.z;
    float away = abs(fract(place) - 0.5);
    float bar = clamp((share * 0.5 - away) / max(blur, 1e-5) + 0.5, 0.0, 1.0);
    float cover = mix(bar, share, smoothstep(0.25, 0.6, blur));
    float edge = clamp((sizes.y - abs(vPaint.y)) / fwidth(vPaint.y) , 0.0, 1.0);
    colour = mix(colour, sleeper, cover * edge * sizes.w);
  }
  gl_FragColor = vec4(colour, 1.0);
}`;

/** How much of the sleepers' colour shows where they are painted. */
const strength = 0.8;

/** Shows the painted sleepers, or leaves them out. */
export function paintSleepers(material: ShaderMaterial, shown: boolean): void {
  (material.uniforms.sizes.value as Vector4).w = shown ? strength : 0;
}

/** The strip from afar: a matt surface with its sleepers painted on. */
export function paintedStrip(m: WayMeasures): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader,
    fragmentShader,
    uniforms: {
      palette: { value: paletteColours(wayFaces) },
      daylight: { value: daylight },
      sleeper: { value: themed(wayFaces[wayFace.sleeper], 'face') },
      // Pitch, half length, share of the pitch that wood takes, strength.
      sizes: { value: new Vector4(m.sleeperPitch, m.sleeperLength / 2, m.sleeperWidth / m.sleeperPitch, strength) },
    },
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 2,
  });
}
