/** How the card is to be used on this machine. */
export interface DrawingOptions {
  readonly dpr: number | [number, number];
  /** Share of the pixels drawn while the view is being turned, and how long after the last turn it is fine again, ms. */
  readonly performance: { readonly min: number; readonly debounce: number };
  readonly gl: {
    readonly antialias: boolean;
    readonly alpha: boolean;
    readonly stencil: boolean;
    readonly powerPreference: 'high-performance';
  };
}

/** Renderers without a card: their time goes by the pixel and the vertex. */
const drawnByProcessor = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** Most device pixels a screen pixel is drawn with. */
const finest = 2;

/**
 * Edges are inked by shaders that soften themselves, so a machine that draws on its processor does without
 * multisampling; a card smooths the rest too.
 *
 * `renderer`: what draws, as it names itself.
 */
export function drawingOptions(renderer: string): DrawingOptions {
  const slow = drawnByProcessor.test(renderer);
  return {
    dpr: slow ? 1 : [1, finest],
    performance: { min: slow ? 1 : 0.5, debounce: 200 },
    gl: { antialias: !slow, alpha: false, stencil: false, powerPreference: 'high-performance' },
  };
}
