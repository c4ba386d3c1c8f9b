import { setConsoleFunction } from 'three';

/** What a package says of itself, which nothing in the app can mend: @react-three/fiber 9.8.2 still makes the clock that three 0.187 has put aside. */
const known = 'THREE.Clock: This module has been deprecated';

/** Passes on what the drawing library has to say, but for the one remark that is known. */
export function passOnRemarks(): void {
  setConsoleFunction((type, message, ...more) => {
    if (!message.startsWith(known)) console[type](message, ...more);
  });
}
