import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { formatAngle, formatLength, formatNumber } from '../../core/units/index.ts';
import { elementLengthMm, type Scene, type SceneElement } from '../../scene/index.ts';
import type { SessionState } from '../types.ts';
import { radiusText } from '../words.ts';
import type { Handle } from './handles.ts';

/** Numbers at the hand, the one being set first. */
export type HandWords = readonly string[];

type Show = Pick<SessionState, 'lengthUnit'>;

/** What a handle sets, in numbers, as the railway now is. */
export function handWords(scene: Scene, trackId: string, track: Track, handle: Handle, show: Show): HandWords {
  const file = scene.tracks.find(({ id }) => id === trackId);
  if (file === undefined) return [];
  const length = (metres: number): string =>
    show.lengthUnit === 'mm'
      ? formatLength(metres, { unit: 'mm', digits: 1 })
      : formatLength(metres, { unit: 'in', fraction: 16 });
  const place = (chainage: number): string => {
    const { x, y } = trackPoint(track, chainage);
    return `${length(x)} east, ${length(y)} north`;
  };
  if ('branchOf' in file.start) {
    const { branchOf, atMm, towards, turnout } = file.start;
    const main = scene.tracks.find(({ id }) => id === branchOf)?.name ?? branchOf;
    if (handle.kind === 'start') return [`${length(atMm / 1000)} along ${main}`, place(0)];
    if (handle.kind === 'heading') return [`turnout to the ${turnout.hand}`, `towards the ${towards} of ${main}`];
  }
  if (handle.kind === 'start') return [place(0)];
  if (handle.kind === 'heading') return [`heading ${angle(trackPoint(track, 0).heading)}`];
  if (handle.kind === 'extend') return [place(track.length), `${length(track.length)} of track`];
  const index = Math.min(handle.element, file.alignment.length - 1);
  const element = file.alignment[index];
  const own = ownWords(element, length, show);
  if (handle.kind !== 'corner') return own;
  const beside = [index - 2, index - 1, index + 1, index + 2].flatMap((k) => {
    const one = file.alignment[k];
    return one?.kind === 'straight' ? length(one.lengthMm / 1000) : [];
  });
  return [...own, `straights ${beside.join(' and ')}`];
}

const angle = (rad: number): string => formatAngle(rad, { digits: 1 });

function ownWords(element: SceneElement, length: (metres: number) => string, show: Show): string[] {
  const metres = elementLengthMm(element) / 1000;
  switch (element.kind) {
    case 'straight':
    case 'transition':
      return [length(metres)];
    case 'arc':
      return [radiusText(element.radiusMm / 1000, show), angle((metres * 1000) / element.radiusMm), length(metres)];
    case 'helix':
      return [
        radiusText(element.radiusMm / 1000, show),
        `${formatNumber(element.turns, { digits: 2 })} turns`,
        length(metres),
      ];
  }
}
