import { type ElementChange, elementLengthMm, type SceneElement } from '../../scene/index.ts';

/** A number of an element that a person can change. */
export interface ElementField {
  readonly key: Exclude<keyof ElementChange, 'turn'>;
  readonly label: string;
  /** Lengths in mm, angles in degrees, turns as a number. */
  readonly measures: 'length' | 'angle' | 'count';
  readonly value: number;
  /** One press of an arrow key. */
  readonly step: number;
  readonly least: number;
  readonly most: number;
}

/** What an element is called by people who do not know its name. */
export const kindWords: Readonly<Record<SceneElement['kind'], string>> = {
  straight: 'Straight',
  arc: 'Curve',
  helix: 'Helix',
  transition: 'Easement',
};

/** The format's own bounds, mm, so that dragging stops where typing would be refused. */
const mostMm = 200_000;
const leastMm = 1;
const mostCantMm = 20;

const length = (value: number): ElementField => ({
  key: 'lengthMm',
  label: 'Length',
  measures: 'length',
  value,
  step: 5,
  least: leastMm,
  most: mostMm,
});

const radius = (value: number): ElementField => ({
  key: 'radiusMm',
  label: 'Radius',
  measures: 'length',
  value,
  step: 5,
  least: 50,
  most: mostMm,
});

/** The numbers of an element in the order people say them; cant where the track has a gauge to cant over. */
export function elementFields(element: SceneElement, canted: boolean): readonly ElementField[] {
  switch (element.kind) {
    case 'straight':
    case 'transition':
      return [length(element.lengthMm)];
    case 'arc': {
      const degrees = element.angleDeg ?? (elementLengthMm(element) * 180) / (Math.PI * element.radiusMm);
      const angle: ElementField = {
        key: 'angleDeg',
        label: 'Angle',
        measures: 'angle',
        value: degrees,
        step: 0.5,
        least: 0.01,
        most: 360,
      };
      return [radius(element.radiusMm), angle, ...cant(element.cantMm, canted)];
    }
    case 'helix': {
      const turns: ElementField = {
        key: 'turns',
        label: 'Turns',
        measures: 'count',
        value: element.turns,
        step: 0.05,
        least: 0.01,
        most: 60,
      };
      return [radius(element.radiusMm), turns, ...cant(element.cantMm, canted)];
    }
  }
}

const cant = (value: number | undefined, canted: boolean): readonly ElementField[] =>
  canted
    ? [{ key: 'cantMm', label: 'Cant', measures: 'length', value: value ?? 0, step: 0.1, least: 0, most: mostCantMm }]
    : [];

/** An element to begin with: curves of the radius and turn of the nearest one before, else a usual one. */
export function freshElement(kind: SceneElement['kind'], before: readonly SceneElement[]): SceneElement {
  const like = before.findLast((element) => element.kind === 'arc' || element.kind === 'helix');
  const { radiusMm, turn } = like ?? ({ radiusMm: 600, turn: 'left' } as const);
  switch (kind) {
    case 'straight':
      return { kind, lengthMm: 300 };
    case 'arc':
      return { kind, radiusMm, turn, angleDeg: 45 };
    case 'helix':
      return { kind, id: 'helix', radiusMm, turn, turns: 1 };
    case 'transition':
      return { kind, lengthMm: 300 };
  }
}
