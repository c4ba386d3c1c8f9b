import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import './explained.css';

interface ExplainedProps {
  /** The word of the trade. */
  readonly children: ReactNode;
  /** What it means, in a sentence or two. */
  readonly words: string;
  readonly className?: string;
}

/** Between a word and what explains it, px. */
const gap = 4;

/** A word of the trade that says what it means when it is pointed at, focused or pressed; Escape or looking elsewhere puts that away. */
export function Explained({ children, words, className = '' }: ExplainedProps) {
  const id = useId();
  const word = useRef<HTMLButtonElement>(null);
  const note = useRef<HTMLSpanElement>(null);
  const [open, setOpen] = useState(false);

  useEffect(() => {
    const sheet = note.current;
    if (!sheet || !word.current || !open) return;
    // In the browser's top layer nothing that scrolls or clips cuts it off.
    sheet.showPopover();
    const at = word.current.getBoundingClientRect();
    const { width, height } = sheet.getBoundingClientRect();
    const below = at.bottom + gap + height <= innerHeight;
    sheet.style.left = `${Math.max(gap, Math.min(at.left, innerWidth - width - gap))}px`;
    sheet.style.top = `${below ? at.bottom + gap : at.top - gap - height}px`;
    const close = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      setOpen(false);
    };
    const away = () => setOpen(false);
    window.addEventListener('keydown', close, { capture: true });
    window.addEventListener('scroll', away, { capture: true, passive: true });
    return () => {
      window.removeEventListener('keydown', close, { capture: true });
      window.removeEventListener('scroll', away, { capture: true });
      if (sheet.isConnected) sheet.hidePopover();
    };
  }, [open]);

  return (
    <>
      <button
        ref={word}
        type="button"
        className={`explained ${className}`}
        aria-describedby={id}
        onPointerEnter={(event) => event.pointerType === 'mouse' && setOpen(true)}
        onPointerLeave={(event) => event.pointerType === 'mouse' && setOpen(false)}
        onFocus={(event) => event.target.matches(':focus-visible') && setOpen(true)}
        onBlur={() => setOpen(false)}
        onClick={() => setOpen(true)}
      >
        {children}
      </button>
      <span ref={note} id={id} role="tooltip" popover="manual" className="explanation">
        {words}
      </span>
    </>
  );
}
