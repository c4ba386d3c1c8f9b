/** What a piece is called on paper and wood: a letter for its track, the number of its element from 1 and, of several, its own: "A6.3". All counted from 0 here. */
export const pieceName = (track: number, element: number, which?: number): string =>
  `${trackLetters(track)}${element + 1}${which === undefined ? '' : `.${which + 1}`}`;

/** A, B, … Z, AA, AB, … */
function trackLetters(track: number): string {
  const letter = String.fromCharCode(65 + (track % 26));
  return track < 26 ? letter : trackLetters(Math.floor(track / 26) - 1) + letter;
}
