/** What stands under a picture. */
export interface Caption {
  /** The railway, and the trial at its moment. */
  readonly title: string;
  /** What comes of it. */
  readonly words: string;
}

/** Draws the stage once more, `scale` times as fine as it is on the screen, and gives its pixels as a picture file. */
export type Drawing = (scale: number) => Promise<Blob>;

/** What pictures need of the browser. */
export interface PicturePort {
  /** The picture with its caption in a strip under it, as PNG. */
  captioned(picture: Blob, caption: Caption): Promise<Blob>;
  /** Writes it to a file of the person's choice; false when they chose none. */
  save(name: string, picture: Blob): Promise<boolean>;
}
