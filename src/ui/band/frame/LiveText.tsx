import { useRef } from 'react';
import { type Live, type Moment, useLive } from './live.ts';

interface Props {
  readonly live: Live;
  readonly className: string;
  readonly read: (moment: Moment) => string;
  /** Whether the value is one that needs a hand: written in the marking colour. */
  readonly marked?: (moment: Moment) => boolean;
}

/** A value that follows the playhead. */
export function LiveText({ live, className, read, marked }: Props) {
  const element = useRef<HTMLSpanElement>(null);
  useLive(live, (moment) => {
    const span = element.current;
    if (!span) return;
    const text = read(moment);
    if (span.textContent !== text) span.textContent = text;
    span.classList.toggle('gwb-marked', marked?.(moment) ?? false);
  });
  return <span ref={element} className={className} />;
}
