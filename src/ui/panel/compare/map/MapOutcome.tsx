import { useState } from 'react';
import { knobAt, type MapState, measureById, type Probe } from '../../../../state/study/index.ts';
import type { Scene } from '../../../../state/types.ts';
import { ProbedPoint } from '../sweep/ProbedPoint.tsx';
import { useStudy } from '../useStudy.ts';
import { withUnit } from '../words.ts';
import { MapChart, type MapPlace } from './MapChart.tsx';

/** What a map came to: the region that passes, the place that is looked at, and what can be made of it. */
export function MapOutcome({ map, scene }: { readonly map: MapState; readonly scene: Scene }) {
  const [chosen, setChosen] = useState<MapPlace | null>(null);
  const drawn = useStudy((state) => state.drawn);
  const across = knobAt(scene, map.ask.across.at);
  const up = knobAt(scene, map.ask.up.at);
  if (across === null || up === null) return null;
  const probe = chosen && probeAt(map, chosen);
  const runs = map.area === null ? `${map.points.length} runs so far` : conclusion(map);
  return (
    <>
      <MapChart
        map={map}
        drawn={drawn === null ? null : measureById(drawn)}
        across={across}
        up={up}
        chosen={chosen}
        onChoose={setChosen}
      />
      <p className="conclusion" role="status">
        {runs}
      </p>
      {chosen && probe ? (
        <ProbedPoint
          title={`${withUnit(chosen.across, across.unit)}, ${withUnit(chosen.up, up.unit)}`}
          probe={probe}
          terms={map}
          name={`${across.label.replace(':', '')} ${withUnit(chosen.across, across.unit)}, ${up.label.replace(':', '')} ${withUnit(chosen.up, up.unit)}`}
          settings={[
            { at: map.ask.across.at, to: chosen.across },
            { at: map.ask.up.at, to: chosen.up },
          ]}
        />
      ) : (
        <p className="quiet about">Press a place of the map to read it, to keep it as a variant, or to try it.</p>
      )}
    </>
  );
}

const probeAt = ({ points }: MapState, { across, up }: MapPlace): Probe | null =>
  points.find((one) => one.across === across && one.up === up)?.probe ?? null;

function conclusion({ area }: MapState): string {
  if (area === null) return '';
  if (!area.whole) return `Stopped after ${area.probes} runs.`;
  if (area.outline.length === 0) return `The verdict is the same everywhere (${area.probes} runs).`;
  const beyond = area.brink.length > 0 ? ' Where it is dashed the range ends: nothing was looked at beyond.' : '';
  return `What passes is outlined, its border found by halving (${area.probes} runs).${beyond}`;
}
