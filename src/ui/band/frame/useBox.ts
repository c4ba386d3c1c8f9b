import { type RefObject, useLayoutEffect, useState } from 'react';

export interface BoxSize {
  readonly width: number;
  readonly height: number;
  /** Device pixels a CSS pixel. */
  readonly density: number;
}

/** Size of an element in whole CSS pixels, followed as it changes; zero until it is known. */
export function useBox(element: RefObject<HTMLElement | null>): BoxSize {
  const [box, setBox] = useState<BoxSize>({ width: 0, height: 0, density: 1 });
  useLayoutEffect(() => {
    const target = element.current;
    if (!target) return;
    const measure = () => {
      const { width, height } = target.getBoundingClientRect();
      const next = { width: Math.floor(width), height: Math.floor(height), density: devicePixelRatio || 1 };
      setBox((now) =>
        now.width === next.width && now.height === next.height && now.density === next.density ? now : next,
      );
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(target);
    // Moving to another screen or zooming the page changes the density, sometimes without changing the size.
    addEventListener('resize', measure);
    return () => {
      observer.disconnect();
      removeEventListener('resize', measure);
    };
  }, [element]);
  return box;
}
