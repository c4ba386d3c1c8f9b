import { type ReactNode, useId, useLayoutEffect, useRef } from 'react';
import './dialog.css';

interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Left out where the content itself says what it is. */
  readonly showTitle?: boolean;
  readonly className?: string;
}

/** A modal sheet of paper; Escape and a press beside it close it. */
export function Dialog({ title, onClose, children, showTitle = true, className = '' }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  // Closed while it is still on the page: only then does the browser give the focus back to where it was.
  useLayoutEffect(() => {
    const element = dialog.current;
    element?.showModal();
    // A scrolling list would take the focus, and with it a ring around half the sheet.
    (
      element?.querySelector<HTMLElement>('input:checked') ??
      element?.querySelector<HTMLElement>('input, .plain-button.first')
    )?.focus();
    return () => element?.close();
  }, []);
  return (
    <dialog
      ref={dialog}
      className={`sheet ${className}`}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onKeyDown={(event) => event.stopPropagation()}
      onClick={(event) => event.target === dialog.current && onClose()}
    >
      <div className="leaf">
        <h2 id={id} className={showTitle ? '' : 'seen-by-readers'}>
          {title}
        </h2>
        {children}
      </div>
    </dialog>
  );
}
