import { useLayoutEffect, useRef } from 'react';

/** Draws into a canvas of device pixels, empty when called. */
export type Paint = (context: CanvasRenderingContext2D) => void;

interface Props {
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  readonly density: number;
  /** Called once a size and once a change of this function; never by the playhead. */
  readonly paint: Paint;
  readonly className?: string;
}

/** A canvas at device resolution that is painted when what it shows changes. */
export function Painted({ width, height, density, paint, className }: Props) {
  const element = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const canvas = element.current;
    const context = canvas?.getContext('2d');
    if (!canvas || !context) return;
    // Setting the size clears the canvas, also when it stays the same.
    canvas.width = Math.max(1, Math.round(width * density));
    canvas.height = Math.max(1, Math.round(height * density));
    paint(context);
  }, [width, height, density, paint]);
  return <canvas ref={element} className={className} style={{ width, height }} />;
}
