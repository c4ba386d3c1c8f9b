import type { Plate } from '../view/plate.ts';
import { type Box, type Line, leaderStart, placeLabel, type Spot } from './placing.ts';

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
    const leaders: Line[] = [];
    for (const label of labels) {
      const { element, anchor } = label;
      if (anchor === null) {
        element.style.visibility = 'hidden';
        continue;
      }
      const size = { width: element.offsetWidth, height: element.offsetHeight };
      const rule = ruleOf(element, size.height);
      const before = this.before.get(label.key) ?? null;
      const spot = placeLabel(anchor, size, frame, { boxes, leaders }, crowd, before, { clearance, rule });
      this.before.set(label.key, { x: spot.x - anchor.x, y: spot.y - anchor.y });
      const box = { left: spot.x - size.width / 2, top: spot.y - size.height / 2, ...size };
      boxes.push(box);
      leaders.push({ from: leaderStart(anchor, box, rule), to: anchor });
      element.style.visibility = 'visible';
      element.style.transform = `translate(${Math.round(box.left)}px, ${Math.round(box.top)}px)`;
      drawLeader(plate, label, anchor, box, rule);
    }
  }

  forget(): void {
    this.before.clear();
  }
}

/** How far under its top a label has its rule, px. */
const ruleOf = (element: HTMLElement, height: number): number => Number(element.dataset.rule ?? height);

/** A rule under the words and from its nearer end a straight line to the place. */
function drawLeader(plate: Plate, { key, tone, clear }: StageLabel, anchor: Spot, box: Box, rule: number): void {
  const look = `stage-leader stage-leader-${tone}`;
  const start = leaderStart(anchor, box, rule);
  const y = Math.round(start.y) + 0.5;
  plate.line(`${key}-rule`, box.left, y, box.left + box.width, y, look);
  const away = Math.hypot(anchor.x - start.x, anchor.y - y);
  const share = Math.max(0, 1 - clear / Math.max(away, 1));
  plate.line(`${key}-leader`, start.x, y, start.x + (anchor.x - start.x) * share, y + (anchor.y - y) * share, look);
  if (clear === 0)
    plate.mark(`${key}-dot`, 'circle', { cx: anchor.x, cy: anchor.y, r: 2.6, class: `stage-dot-${tone}` });
}
