import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useRef } from 'react';
import type { Pictures } from '../../state/picture/index.ts';
import type { HandleLayer } from '../handles/handleLayer.ts';
import { paper } from '../palette.ts';
import { themed } from '../theme.ts';
import type { Director } from './director.ts';
import { followTheme } from './followTheme.ts';
import type { Lettering } from './lettering.ts';
import { showProbe } from './probe.ts';

interface FramesProps {
  readonly director: Director;
  readonly lettering: Lettering;
  /** Null where the plan cannot be changed. */
  readonly handles: HandleLayer | null;
  /** Filled with what asks for a new frame. */
  readonly redraw: RefObject<() => void>;
  /** Filled with what asks for a new frame while a hand turns the view: coarser then, fine again when it rests. */
  readonly turned: RefObject<() => void>;
  /** Told how a picture of the stage is drawn. */
  readonly drawnBy: Pictures['drawnBy'] | undefined;
}

/** Draws frames when asked to. Nothing of a frame goes through React. */
export function Frames({ director, lettering, handles, redraw, turned, drawnBy }: FramesProps) {
  const invalidate = useThree((state) => state.invalidate);
  const regress = useThree((state) => state.performance.regress);
  const gl = useThree((state) => state.gl);
  const probe = useRef<ReturnType<typeof showProbe> | null>(null);

  useEffect(() => {
    gl.info.autoReset = false;
    probe.current = showProbe(director);
    redraw.current = () => invalidate();
    turned.current = () => {
      regress();
      invalidate();
    };
    const unfollow = followTheme(() => {
      gl.setClearColor(themed(paper.stage, 'face'), 1);
      invalidate();
    });
    return () => {
      unfollow();
      probe.current?.remove();
      redraw.current = () => {};
      turned.current = () => {};
    };
  }, [gl, director, invalidate, regress, redraw, turned]);

  const three = useThree((state) => state.get);
  useEffect(
    () =>
      drawnBy?.((scale) => {
        const { size } = three();
        const ratio = gl.getPixelRatio();
        gl.setPixelRatio(ratio * scale);
        director.frame(gl, size.width, size.height);
        // Its pixels are there until this turn is over, and are taken before it is.
        const pixels = new Promise<Blob>((resolve, reject) =>
          gl.domElement.toBlob((blob) =>
            blob === null ? reject(new Error('The picture is too large for this machine.')) : resolve(blob),
          ),
        );
        gl.setPixelRatio(ratio);
        invalidate();
        return pixels;
      }),
    [drawnBy, gl, director, three, invalidate],
  );

  useFrame((state) => {
    const start = performance.now();
    state.gl.info.reset();
    const shown = director.frame(state.gl, state.size.width, state.size.height);
    lettering.draw(shown);
    handles?.draw(shown);
    const { render, memory } = state.gl.info;
    probe.current?.frame(shown, performance.now() - start, {
      calls: render.calls,
      vertices: render.triangles,
      geometries: memory.geometries,
    });
  }, 1);
  return null;
}
