import { formatNumber, thinSpace } from '../../../../core/units/index.ts';
import type { SceneTourStop, SceneTourView } from '../../../../state/show/index.ts';

const lensFrom = { side: 'from the side', above: 'from above', along: 'along the train' } as const;

/** A view of a tour in words. */
export function viewWords(view: SceneTourView): string {
  switch (view.kind) {
    case 'whole':
      return 'The whole railway';
    case 'down':
      return 'Straight down on it';
    case 'eye':
      return 'From eye height';
    case 'place':
      return 'From where the eye was';
    case 'ride':
      return view.joint === undefined ? 'Riding on the train' : `Riding on joint ${view.joint}`;
    case 'follow':
      return view.joint === undefined ? 'Following the train' : `Following joint ${view.joint}`;
    case 'lens':
      return `Joint ${view.joint} through the lens, ${lensFrom[view.from ?? 'side']}`;
  }
}

const secondsWords = (seconds: number): string => formatNumber(seconds, { digits: 2, trim: true });

/** When a stop stands, or from when till when it plays. */
export function momentWords({ atS = 0, tillS }: Pick<SceneTourStop, 'atS' | 'tillS'>): string {
  const till = tillS === undefined ? '' : ` to ${secondsWords(tillS)}`;
  return `${secondsWords(atS)}${till}${thinSpace}s`;
}
