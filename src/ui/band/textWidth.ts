/** Width in CSS pixels of a text in a CSS font shorthand. */
export type MeasureText = (text: string, font: string) => number;

let context: CanvasRenderingContext2D | null = null;

/** Measured by the browser, so that lettering fits whichever of the listed fonts this machine has. */
export const textWidth: MeasureText = (text, font) => {
  context ??= document.createElement('canvas').getContext('2d');
  // Without a canvas a little over the average width of a letter keeps lettering apart.
  if (!context) return text.length * 7;
  context.font = font;
  return context.measureText(text).width;
};
