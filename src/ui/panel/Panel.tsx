import { useLayoutEffect, useRef } from 'react';
import { chapterOf } from '../chapters/index.ts';
import { useSession } from '../context.tsx';
import { JointSheet } from './joint/JointSheet.tsx';
import './panel.css';
import './fields.css';

/** The sheet of the chosen chapter; while the lens is open, the sheet of the joint under it, but where the lens itself is what the chapter is about. */
export function Panel() {
  const chapter = useSession((state) => state.chapter);
  const opened = useSession((state) => state.opened);
  const { Sheet, stays } = chapterOf(chapter);
  const joint = useSession((state) => (state.lens.open && !stays ? state.chosenJoint : null));
  const ready = useSession((state) => state.compiled !== null && state.trial !== null);
  const scroll = useRef<HTMLDivElement>(null);
  const shown = joint === null ? chapter : 'joint';
  // Another sheet, or another railway, is read from its top.
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is on the sheet is what it depends on
  useLayoutEffect(() => {
    // Braces: the newest browsers answer a scroll with a promise, which is no way to end an effect.
    scroll.current?.scrollTo(0, 0);
  }, [shown, opened]);
  return (
    <div ref={scroll} className="panel" tabIndex={-1}>
      {ready && (joint === null ? <Sheet /> : <JointSheet joint={joint} />)}
    </div>
  );
}
