import { AlwaysDepth, BufferAttribute, BufferGeometry, Mesh, ShaderMaterial, Vector3 } from 'three';
import { paper } from '../palette.ts';
import { themed } from '../theme.ts';

const vertexShader = /* glsl */ `
void main() {
  gl_Position = vec4(position.xy, 0.0, 1.0);
}`;

/**
 * Inside the circle it keeps the picture and puts the nearest depth over it, so that nothing drawn later shows there;
 * outside it lays the paper's ground and the furthest depth.
 */
const fragmentShader = /* glsl */ `
uniform vec3 circle;
uniform vec3 ground;
void main() {
  float away = distance(gl_FragCoord.xy, circle.xy);
  float outside = clamp(away - circle.z + 0.5, 0.0, 1.0);
  gl_FragColor = vec4(ground, outside);
  gl_FragDepth = outside > 0.5 ? 1.0 : 0.0;
}`;

/** The round mask between the lens's picture and the stage's: drawn over the whole canvas, no camera. */
export class LensMask {
  readonly mesh: Mesh;
  private readonly circle = new Vector3();
  private readonly geometry = new BufferGeometry();
  private readonly material: ShaderMaterial;

  constructor() {
    this.geometry.setAttribute('position', new BufferAttribute(new Float32Array([-1, -1, 0, 3, -1, 0, -1, 3, 0]), 3));
    this.material = new ShaderMaterial({
      vertexShader,
      fragmentShader,
      uniforms: {
        circle: { value: this.circle },
        ground: { value: themed(paper.stage, 'face') },
      },
      transparent: true,
      depthWrite: true,
      depthFunc: AlwaysDepth,
    });
    this.mesh = new Mesh(this.geometry, this.material);
    this.mesh.frustumCulled = false;
  }

  /** The circle in device pixels, y from the foot of the canvas. */
  set(x: number, y: number, radius: number): void {
    this.circle.set(x, y, radius);
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }
}
