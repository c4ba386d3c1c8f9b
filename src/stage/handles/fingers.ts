/** What hands the fingers on a stage to its camera or to its handles: one finger may hold a handle, two always turn, move and zoom the picture. */
export class Fingers {
  /** The last event of a finger that holds a handle; null while none does. */
  first: PointerEvent | null = null;
  /** Called when a second finger comes while the first holds a handle. */
  onSecond: () => void = () => {};

  constructor(
    private readonly camera: {
      /** Whether a finger is on the picture. */
      busy(): boolean;
      /** Takes a finger as if it had been put down on the picture. */
      join(event: PointerEvent): void;
    },
  ) {}

  /** Whether a finger that was just put down, on a handle or on the picture, is the camera's and not to hold anything. */
  takesOver(event: PointerEvent): boolean {
    if (event.pointerType !== 'touch') return false;
    const { first } = this;
    if (first === null && !this.camera.busy()) return false;
    if (first !== null) {
      this.onSecond();
      this.first = null;
      this.camera.join(first);
    }
    this.camera.join(event);
    return true;
  }
}
