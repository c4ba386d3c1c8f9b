import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Whether a key is a command of the page within a field too: letters and digits alone are the field's own. */
export const isCommandChord = ({
  ctrlKey,
  metaKey,
  altKey,
  shiftKey,
}: Pick<KeyboardEvent, 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>): boolean =>
  ctrlKey || metaKey || (altKey && shiftKey);

/** Leaves a field or a list to the sheet that it is on: the single keys are then the page's, and Tab goes on from there. */
export function leaveField(field: HTMLElement): void {
  const sheet = field.closest<HTMLElement>('.panel');
  if (sheet === null) field.blur();
  else sheet.focus({ preventScroll: true });
}

/** A field whose text is selected anew once it was taken, so that the next thing typed replaces it. */
export function useSelectAgain(): readonly [field: RefObject<HTMLInputElement | null>, selectAgain: () => void] {
  const field = useRef<HTMLInputElement>(null);
  const [asked, setAsked] = useState(0);
  // After the picture: by then the field shows what was taken.
  useLayoutEffect(() => {
    if (asked > 0 && field.current === document.activeElement) field.current?.select();
  }, [asked]);
  return [field, () => setAsked((count) => count + 1)];
}
