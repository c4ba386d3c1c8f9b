import { useMemo } from 'react';
import type { Pass } from '../../../state/routeEdits/index.ts';
import type { Ground } from '../section/ground.ts';
import type { ProfileDrawing } from '../section/profileDrawing.ts';
import { lengthFigure, lengthUnit, type Show, withUnit } from '../words.ts';
import { passRuns } from './passRuns.ts';

interface PassLinesProps {
  readonly passes: readonly Pass[];
  readonly ground: Ground;
  readonly profile: ProfileDrawing;
  readonly show: Show;
}

/** Undersides of decks over the track and rails under it, dashed, and the least clear height where it is. */
export function PassLines({ passes, ground, profile, show }: PassLinesProps) {
  const runs = useMemo(() => [...passRuns(passes, 'above'), ...passRuns(passes, 'below')], [passes]);
  const least = runs.reduce<(typeof runs)[number] | null>(
    (best, run) => (best === null || run.least.clear < best.least.clear ? run : best),
    null,
  );
  const [leastX] = least ? ground.xsOf(least.least.chainage) : [];
  return (
    <g>
      {runs.map(({ side, points }) => {
        const path = points
          .flatMap(([chainage, height]) =>
            ground.xsOf(chainage).map((x) => `${x.toFixed(1)},${profile.yOf(height).toFixed(1)}`),
          )
          .join('L');
        return path === '' ? null : <path key={`${side}-${points[0][0]}`} d={`M${path}`} className="gwb-pass" />;
      })}
      {least && leastX !== undefined && (
        <text
          x={leastX}
          y={profile.datum - 4}
          textAnchor={leastX < 60 ? 'start' : leastX > ground.axis.width - 60 ? 'end' : 'middle'}
          className="gwb-letters gwb-grade gwb-in-fill gwb-pass-words"
        >
          {`least clear ${withUnit(lengthFigure(least.least.clear, show), lengthUnit(show))}`}
        </text>
      )}
    </g>
  );
}
