/** A short name for a thing by what people call it, such as is not taken yet; `otherwise` where its letters give none. */
export function freshId(name: string, taken: ReadonlySet<string>, otherwise: string): string {
  const stem =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 40) || otherwise;
  let id = stem;
  for (let k = 2; taken.has(id); k++) id = `${stem}-${k}`;
  return id;
}
