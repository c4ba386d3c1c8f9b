import { OrthographicCamera, type Scene, Scene as Sheet, type WebGLRenderer } from 'three';
import type { LensFrame } from './lensFrame.ts';
import { LensMask } from './lensMask.ts';
import type { LensCircle } from './lensPlace.ts';

/** The eye stands this far in front of the cut, m. Parallel rays: it makes no difference to the picture. */
const beforeCut = 0.01;

/** Draws the lens's picture into its circle on the canvas, before the stage is drawn around it. */
export class LensPainter {
  private readonly camera = new OrthographicCamera();
  private readonly mask = new LensMask();
  private readonly sheet = new Sheet();

  constructor() {
    this.sheet.add(this.mask.mesh);
  }

  /** Leaves the canvas so that nothing drawn after it shows inside the circle (px). */
  draw(gl: WebGLRenderer, scene: Scene, frame: LensFrame, circle: LensCircle, height: number): void {
    const ratio = gl.getPixelRatio();
    this.aim(frame);
    const size = 2 * circle.radius;
    const x = circle.x - circle.radius;
    const y = height - circle.y - circle.radius;
    gl.setViewport(x, y, size, size);
    gl.setScissor(x, y, size, size);
    gl.setScissorTest(true);
    gl.render(scene, this.camera);
    this.mask.set(circle.x * ratio, (height - circle.y) * ratio, circle.radius * ratio);
    gl.render(this.sheet, this.camera);
    gl.setScissorTest(false);
  }

  private aim({ centre, towards, up, radius, before, behind }: LensFrame): void {
    const { camera } = this;
    const stand = before + beforeCut;
    camera.position.set(centre[0] + stand * towards[0], centre[1] + stand * towards[1], centre[2] + stand * towards[2]);
    camera.up.set(...up);
    camera.lookAt(...centre);
    camera.left = -radius;
    camera.right = radius;
    camera.top = radius;
    camera.bottom = -radius;
    camera.near = beforeCut;
    camera.far = stand + behind;
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
  }

  dispose(): void {
    this.mask.dispose();
  }
}
