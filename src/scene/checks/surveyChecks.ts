import { mostSupports } from '../../core/survey/index.ts';
import { placedSupports, trackLengthMm } from '../places.ts';
import type { Scene } from '../schema/schema.ts';
import type { SceneReading, SceneSurvey } from '../schema/surveySchema.ts';
import type { Problem } from './problems.ts';
import { repeatedIds, unknownId } from './references.ts';

/** What is wrong with the surveys of a scene whose tracks are sound. */
export function surveyProblems(scene: Scene): Problem[] {
  const surveys = scene.surveys ?? [];
  return [
    ...repeatedIds('surveys', surveys),
    ...surveys.flatMap((survey, index) => oneSurvey(scene, survey, `surveys[${index}]`)),
  ];
}

function oneSurvey(scene: Scene, survey: SceneSurvey, path: string): Problem[] {
  const track = scene.tracks.find(({ id }) => id === survey.track);
  if (track === undefined) {
    return [
      unknownId(
        `${path}.track`,
        survey.track,
        scene.tracks.map(({ id }) => id),
      ),
    ];
  }
  const count = placedSupports(track).length;
  if (count < 2 || count > mostSupports) {
    const allowed = `a track with 2 to ${mostSupports} supports`;
    return [{ path: `${path}.track`, found: `"${track.id}", which has ${count}`, allowed, example: '' }];
  }
  const problems = repeatedIds(`${path}.instruments`, survey.instruments ?? []);
  const support = (number: number | undefined, at: string): void => {
    if (number === undefined || number <= count) return;
    problems.push({ path: at, found: `support ${number}`, allowed: `1 to ${count} on this track`, example: '1' });
  };
  const lengthMm = trackLengthMm(track);
  survey.readings.forEach((reading, index) => {
    const at = `${path}.readings[${index}]`;
    for (const [field, number] of supportsOf(reading)) support(number, `${at}.${field}`);
    if ('atMm' in reading && reading.atMm !== undefined && reading.atMm > lengthMm) {
      const allowed = `0 to ${Math.floor(lengthMm)} mm on this track`;
      problems.push({ path: `${at}.atMm`, found: `chainage ${reading.atMm} mm`, allowed, example: '1200' });
    }
    const fitting = (survey.instruments ?? []).filter(({ reads }) => reads === reading.kind).map(({ id }) => id);
    if (reading.instrument !== undefined && !fitting.includes(reading.instrument)) {
      problems.push({
        ...unknownId(`${at}.instrument`, reading.instrument, fitting),
        found: `"${reading.instrument}", which is no instrument of this survey that reads a ${reading.kind}`,
      });
    }
  });
  for (const [field, list] of [['fixed', survey.fixed] as const, ['mend.locked', survey.mend?.locked] as const]) {
    list?.forEach((number, index) => {
      support(number, `${path}.${field}[${index}]`);
    });
  }
  return problems;
}

function supportsOf(reading: SceneReading): [field: string, number: number | undefined][] {
  if (reading.kind !== 'rise') return [['support', reading.support]];
  return [
    ['fromSupport', reading.fromSupport],
    ['toSupport', reading.toSupport],
  ];
}
