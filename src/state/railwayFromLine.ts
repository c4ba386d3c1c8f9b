import { centrelineKind, importedScene, serialiseScene, shapeScales } from '../scene/index.ts';

/** What a dropped line is fitted to within, mm, and in which scale: as the command line does when nothing is said. */
const toleranceMm = 1;
const scaleName = 'HO';

/** Letters in which the first row is looked for. */
const longestHead = 4000;

/** A first row that names the columns x and y; other tables hold readings. */
const namesPlaces = (text: string): boolean =>
  /^\s*"?x\b[^\n]*[\s,;"]y\b/i.test(text.slice(0, longestHead).replace(/^(#[^\n]*\n|\s)+/, ''));

/**
 * The scene file of a railway along a drawn or measured line; null when a file is no drawing and no table of x and y. Throws RangeError in words
 * when it is one and no railway comes of it.
 */
export function railwayFromLine(
  fileName: string,
  text: string,
): { readonly name: string; readonly text: string } | null {
  const kind = centrelineKind(fileName);
  if (kind === null || (kind === 'csv' && !namesPlaces(text))) return null;
  const scale = shapeScales.find(({ name }) => name === scaleName) ?? shapeScales[0];
  const { scene } = importedScene(fileName, text, { toleranceMm, scale });
  return { name: fileName.replace(/\.[^.]*$/, '.json'), text: serialiseScene(scene) };
}
