const svgSpace = 'http://www.w3.org/2000/svg';

type Attributes = Readonly<Record<string, string | number>>;

/**
 * A sheet of SVG over the picture, drawn anew for each frame without touching what has not changed: each mark has a
 * key, and marks that a frame leaves out are hidden.
 */
export class Plate {
  private readonly marks = new Map<string, SVGElement>();
  private readonly drawn = new Set<string>();
  private readonly last = new Map<string, string>();

  constructor(private readonly sheet: SVGElement) {}

  begin(): void {
    this.drawn.clear();
  }

  /** Draws one mark: an element of SVG with its attributes, and text for those that have it. */
  mark(key: string, kind: string, attributes: Attributes, text?: string): void {
    let element = this.marks.get(key);
    if (element === undefined) {
      element = document.createElementNS(svgSpace, kind) as SVGElement;
      this.marks.set(key, element);
      this.sheet.append(element);
    }
    this.drawn.add(key);
    const now = JSON.stringify([attributes, text]);
    if (this.last.get(key) === now) return;
    this.last.set(key, now);
    for (const [name, value] of Object.entries(attributes)) {
      element.setAttribute(name, typeof value === 'number' ? String(Math.round(value * 100) / 100) : value);
    }
    element.removeAttribute('display');
    if (text !== undefined) element.textContent = text;
  }

  line(key: string, x1: number, y1: number, x2: number, y2: number, look: string): void {
    this.mark(key, 'line', { x1, y1, x2, y2, class: look });
  }

  text(key: string, x: number, y: number, words: string, look: string): void {
    this.mark(key, 'text', { x, y, class: look }, words);
  }

  end(): void {
    for (const [key, element] of this.marks) {
      if (this.drawn.has(key)) continue;
      this.last.delete(key);
      element.setAttribute('display', 'none');
    }
  }

  clear(): void {
    for (const element of this.marks.values()) element.remove();
    this.marks.clear();
    this.last.clear();
  }
}
