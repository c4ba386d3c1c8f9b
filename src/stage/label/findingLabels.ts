import type { Plate } from '../view/plate.ts';
import { type Box, placeLabel, type Spot } from './placing.ts';

/** A label over the stage: its element, what it points at (px; null: out of sight), and the tone of its line. */
export interface StageLabel {
  readonly key: string;
  readonly element: HTMLElement;
  readonly anchor: Spot | null;
  readonly tone: 'mark' | 'ink';
  /** Its line stops this far from the anchor, px. */
  readonly clear: number;
}

/** Places labels and draws their leaders, and remembers where they stood so that they do not jump about. */
export class FindingLabels {
  private readonly before = new Map<string, Spot>();

  draw(
    plate: Plate,
    labels: readonly StageLabel[],
    frame: Box,
    taken: readonly Box[],
    crowd: ArrayLike<number>,
    clearance: number,
  ): void {
    const boxes = [...taken];
    for (const label of labels) {
      const { element, anchor } = label;
      if (anchor === null) {
        element.style.visibility = 'hidden';
        continue;
      }
      const size = { width: element.offsetWidth, height: element.offsetHeight };
      const spot = placeLabel(anchor, size, frame, boxes, crowd, this.before.get(label.key) ?? null, clearance);
      this.before.set(label.key, { x: spot.x - anchor.x, y: spot.y - anchor.y });
      const box = { left: spot.x - size.width / 2, top: spot.y - size.height / 2, ...size };
      boxes.push(box);
      element.style.visibility = 'visible';
      element.style.transform = `translate(${Math.round(box.left)}px, ${Math.round(box.top)}px)`;
      leader(plate, label, anchor, box);
    }
  }

  forget(): void {
    this.before.clear();
  }
}

/** A rule under the words and from its nearer end a straight line to the place. */
function leader(plate: Plate, { key, tone, clear, element }: StageLabel, anchor: Spot, box: Box): void {
  const look = `stage-leader stage-leader-${tone}`;
  const rule = Number(element.dataset.rule ?? box.height);
  const y = Math.round(box.top + rule) + 0.5;
  const left = anchor.x < box.left + box.width / 2;
  const near = left ? box.left : box.left + box.width;
  const far = left ? box.left + box.width : box.left;
  plate.line(`${key}-rule`, far, y, near, y, look);
  const away = Math.hypot(anchor.x - near, anchor.y - y);
  const share = Math.max(0, 1 - clear / Math.max(away, 1));
  plate.line(`${key}-leader`, near, y, near + (anchor.x - near) * share, y + (anchor.y - y) * share, look);
  if (clear === 0)
    plate.mark(`${key}-dot`, 'circle', { cx: anchor.x, cy: anchor.y, r: 2.6, class: `stage-dot-${tone}` });
}
