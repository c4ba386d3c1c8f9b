/** What every scene file has at its top, one of which is enough for it to be meant as one. */
const marks = ['gradewright', 'tracks', 'trials', 'stock', 'scale'] as const;

/**
 * Whether the text of a file was never meant as a scene: no JSON object at all, or one without anything that a scene has. What is meant as one, however broken, is
 * told place by place instead.
 */
export function isNoScene(text: string): boolean {
  const body = text.replace(/^\uFEFF/, '').trimStart();
  if (!body.startsWith('{')) return true;
  try {
    const read = JSON.parse(body) as Readonly<Record<string, unknown>>;
    return !marks.some((mark) => mark in read);
  } catch {
    return !marks.some((mark) => body.includes(`"${mark}"`));
  }
}
