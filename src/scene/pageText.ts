/** Id of the element of a page to pass on that a railway's own file stands in. */
export const sceneElement = 'gradewright-scene';

/** The element as it begins, to the letter: nothing else of the page is read. */
const begins = `<script type="application/json" id="${sceneElement}">`;
const ends = '</script>';

/** A scene's file as it stands in a page: no sign in it can end the element or begin another. */
export const inPage = (sceneText: string): string => `${begins}${sceneText.replaceAll('<', '\\u003c')}${ends}`;

/** The text of the scene file that stands in a page; null where the text is no such page. */
export function sceneInPage(text: string): string | null {
  if (!text.trimStart().startsWith('<')) return null;
  const from = text.indexOf(begins);
  if (from < 0) return null;
  const to = text.indexOf(ends, from);
  return to < 0 ? null : text.slice(from + begins.length, to);
}
