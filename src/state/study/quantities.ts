import {
  type Address,
  fieldName,
  fieldUnit,
  type Scene,
  type SceneQuantity,
  sceneQuantities,
} from '../../scene/index.ts';

export { type FieldReading, readField } from '../../scene/index.ts';

/** A number of the scene as a person picks it from a list. */
export interface StudyQuantity extends Pick<SceneQuantity, 'at' | 'value' | 'least' | 'most' | 'whole' | 'about'> {
  /** "spiral: radius" */
  readonly label: string;
  /** As it is written; nothing for a plain number. */
  readonly unit: string;
}

export interface QuantityGroup {
  readonly name: string;
  readonly quantities: readonly StudyQuantity[];
}

/** The numbers that a study can vary, under what they belong to. */
export function quantityGroups(scene: Scene): QuantityGroup[] {
  const groups = new Map<string, StudyQuantity[]>();
  for (const { of, ...quantity } of sceneQuantities(scene)) {
    const [group = 'The whole railway', ...parts] = of;
    const { at } = quantity;
    const own = at.startsWith('deck/') ? `deck ${fieldName(at)}` : fieldName(at);
    const label = parts.length === 0 ? own : `${parts.join(', ')}: ${own}`;
    const list = groups.get(group) ?? [];
    list.push({ ...quantity, label, unit: fieldUnit(at) });
    groups.set(group, list);
  }
  return [...groups].map(([name, quantities]) => ({ name, quantities }));
}

/** One number of the scene by its address. */
export function quantityAt(scene: Scene, at: Address): StudyQuantity | null {
  return (
    quantityGroups(scene)
      .flatMap(({ quantities }) => quantities)
      .find((one) => one.at === at) ?? null
  );
}

/** A range worth sweeping around a number: half to one and a half times it, or a little either way of nothing. */
export function usualRange({ value, least, most, whole }: StudyQuantity): readonly [number, number] {
  const spread = value === 0 ? (whole ? 2 : 5) : Math.abs(value) / 2;
  const low = Math.max(least, value - spread);
  const high = Math.min(most, value + spread);
  return whole ? [Math.floor(low), Math.ceil(high)] : [rounded(low), rounded(high)];
}

/** Three significant digits, as a person would type it. */
const rounded = (value: number): number => Number(value.toPrecision(3));
