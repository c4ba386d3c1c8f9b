/** A rectangle in CSS pixels. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Room for lettering: takes a box only where nothing lies yet. First come, first served, so ask in order of weight. */
export class LabelRoom {
  readonly #taken: Box[] = [];
  readonly #bounds: Box;

  constructor(bounds: Box) {
    this.#bounds = bounds;
  }

  /** Takes the box if it is free and inside the bounds; false, and nothing taken, otherwise. */
  take(box: Box): boolean {
    const { left, right, top, bottom } = this.#bounds;
    if (box.left < left || box.right > right || box.top < top || box.bottom > bottom) return false;
    const meets = (other: Box) =>
      box.left < other.right && other.left < box.right && box.top < other.bottom && other.top < box.bottom;
    if (this.#taken.some(meets)) return false;
    this.#taken.push(box);
    return true;
  }

  /** Keeps a box free of later lettering, whatever lies there. */
  block(box: Box): void {
    this.#taken.push(box);
  }
}
