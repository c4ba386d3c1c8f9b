/** A railway as earlier versions of the program kept it: told apart by its name alone. */
export interface OldKept {
  readonly name: string;
  readonly trialId: string;
  readonly text: string;
  readonly at: number;
}

/** Whether a value has what every kept railway has had. */
export function isOldKept(value: unknown): value is OldKept {
  if (typeof value !== 'object' || value === null) return false;
  const { name, trialId, text, at } = value as Partial<Record<keyof OldKept, unknown>>;
  return typeof name === 'string' && typeof trialId === 'string' && typeof text === 'string' && typeof at === 'number';
}

/** The railways in the text that earlier versions of the program kept them all in; none in what cannot be read. */
export function oldList(text: string): readonly OldKept[] {
  try {
    const stored: unknown = JSON.parse(text);
    if (!Array.isArray(stored)) return [];
    return stored.filter(isOldKept).map(({ name, trialId, text: scene, at }) => ({ name, trialId, text: scene, at }));
  } catch {
    return [];
  }
}
