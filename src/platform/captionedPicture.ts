/** Height of the strip under a picture as a share of its width, and of its letters as a share of the strip. */
const strip = 0.062;
const letters = 0.29;
const air = 0.34;

const paper = '#fbfaf6';
const ink = '#18222e';
const ink2 = '#46505c';

/** A picture with a title and a line of words in a strip under it, as PNG; what is longer than the picture is wide is cut with an ellipsis. */
export async function captionedPicture(
  picture: Blob,
  { title, words }: { readonly title: string; readonly words: string },
): Promise<Blob> {
  const image = await createImageBitmap(picture);
  const { width, height } = image;
  const high = Math.round(width * strip);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height + high;
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('This browser draws no pictures.');
  context.drawImage(image, 0, 0);
  image.close();
  context.fillStyle = paper;
  context.fillRect(0, height, width, high);
  context.fillStyle = ink;
  context.fillRect(0, height, width, Math.max(1, Math.round(width / 1000)));
  const size = high * letters;
  const left = high * air;
  const write = (text: string, down: number, font: string, colour: string): void => {
    context.font = font;
    context.fillStyle = colour;
    context.fillText(
      cut(text, (tried) => context.measureText(tried).width <= width - 2 * left),
      left,
      height + high * down,
    );
  };
  write(title, 0.42, `600 ${size}px Georgia, serif`, ink);
  write(words, 0.8, `${size}px sans-serif`, ink2);
  return new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob === null ? reject(new Error('The picture is too large for this browser.')) : resolve(blob)),
      'image/png',
    ),
  );
}

/** The longest beginning of a text that fits, with an ellipsis where it is not all of it. */
function cut(text: string, fits: (tried: string) => boolean): string {
  if (fits(text)) return text;
  let end = text.length;
  while (end > 0 && !fits(`${text.slice(0, end)}…`)) end--;
  return `${text.slice(0, end)}…`;
}
