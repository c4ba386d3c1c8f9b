/** What draws on a canvas of this thread, as it names itself; empty where nothing does. */
export function nameOfRenderer(canvas: HTMLCanvasElement | OffscreenCanvas): string {
  const gl = canvas.getContext('webgl2') as WebGL2RenderingContext | null;
  if (gl === null) return '';
  const facts = gl.getExtension('WEBGL_debug_renderer_info');
  const name = String(gl.getParameter(facts === null ? gl.RENDERER : facts.UNMASKED_RENDERER_WEBGL));
  gl.getExtension('WEBGL_lose_context')?.loseContext();
  return name;
}
