import { closestCall, describeFinding, explainRisk, standingOf } from '../../core/findings/index.ts';
import type { Finding } from '../../core/findings/types.ts';
import { newTrackPoint, trackPoint } from '../../core/track/index.ts';
import { formatLength } from '../../core/units/index.ts';
import { bounds, type NewTourStop, type Scene, type SceneTourView } from '../../scene/index.ts';
import type { CompiledTrial, TrialResult } from '../../sim/types.ts';
import type { SessionState } from '../types.ts';
import { jointOf, namingOf } from '../words.ts';
import { jointNumberOf } from './stops.ts';

/** Worst places shown: after five an audience has lost the first. */
const mostWorst = 5;

/** How long before the moment it is about a stop begins, s of the trial; through the lens, which is twenty times slower. */
const leadS = 2.5;
const lensLeadS = 0.2;

/** A view of a place: its height as a multiple of the longest vehicle, the least and the greatest of it, m. */
const vehiclesHigh = 2.6;
const leastHigh = 0.25;
const mostHigh = 1.6;

/** From how high a place is looked at, and the angle of view, degrees. */
const aboveDeg = 24;
const fieldDeg = 24;

/** Curves flatter than this are looked at as straight track is, 1/m. */
const flat = 0.05;

/** What a proposal is made of: a trial that is solved, and how the person wants numbers. */
export interface Solved {
  readonly scene: Scene;
  readonly trial: CompiledTrial;
  readonly result: TrialResult;
  readonly show: Pick<SessionState, 'lengthUnit' | 'gradeForm'>;
}

/**
 * A tour of a railway as one of its trials found it: the whole of it, the worst places in order of gravity (the closest call where none is bad),
 * the tightest headroom where a track crosses over, and the end of the run.
 */
export function proposedTour(solved: Solved): NewTourStop[] {
  const { scene, trial, result } = solved;
  const { findings, run } = result;
  const bad = findings.filter((finding) => standingOf(finding) !== 'passes');
  const closest = closestCall(findings);
  const worst = bad.length > 0 ? withoutRepeats(bad).slice(0, mostWorst) : closest === null ? [] : [closest];
  const headroom = findings.find(({ risk }) => risk === 'headroom');
  const places = headroom === undefined || worst.includes(headroom) ? worst : [...worst, headroom];
  const vehicles = trial.train.vehicles.length;
  return [
    {
      title: scene.name,
      words: `${trial.name}. ${vehicles === 1 ? 'One vehicle' : `${vehicles} vehicles`} over ${longWords(trial.path.track.length, solved.show)} of line.`,
      view: { kind: 'whole' },
      trial: trial.id,
    },
    ...places.map((finding) => stopAt(finding, solved)),
    {
      title: 'Where the run ends',
      words: 'What became of the whole train.',
      view: { kind: 'follow' },
      trial: trial.id,
      atS: seconds(run.time.at(-1) ?? 0),
    },
  ];
}

/** One finding for each check and what it is about: a coupling that is bad at three places is seen once. */
const withoutRepeats = (findings: readonly Finding[]): Finding[] =>
  findings.filter(
    (finding, index) =>
      findings.findIndex(({ risk, subject }) => risk === finding.risk && subject === finding.subject) === index,
  );

function stopAt(finding: Finding, solved: Solved): NewTourStop {
  const { trial, result, show } = solved;
  const { title, where } = describeFinding(finding, namingOf({ trial, result }), show);
  const joint = jointOf(finding);
  const lens = joint !== null && trial.train.vehicles.length > 1;
  const tillS = seconds(finding.time);
  const atS = seconds(Math.max(0, finding.time - (lens ? lensLeadS : leadS)));
  return {
    title: `${title}: ${where}`.slice(0, bounds.name),
    words: explainRisk(finding.risk).slice(0, bounds.sentence),
    view: lens ? lensOn(joint, finding.risk, trial) : viewOfPlace(finding, trial),
    trial: trial.id,
    atS,
    ...(tillS > atS && { tillS }),
    risk: finding.risk,
  };
}

/** What goes wrong across the track is seen from above. */
const across: ReadonlySet<Finding['risk']> = new Set(['buffer-lock', 'coupler-swing']);

const lensOn = (joint: number, risk: Finding['risk'], trial: CompiledTrial): SceneTourView => ({
  kind: 'lens',
  joint: jointNumberOf(joint, trial),
  ...(across.has(risk) && { from: 'above' }),
});

/** A view of the place of a finding from the outside of its curve, a little from above: nothing of a helix stands before it there. */
function viewOfPlace({ chainage }: Finding, { path, train }: CompiledTrial): SceneTourView {
  const at = path.reversed ? path.track.length - chainage : chainage;
  const { x, y, z, heading, curvature } = trackPoint(path.track, at, newTrackPoint());
  const side = heading + (curvature > flat ? -Math.PI / 2 : Math.PI / 2);
  const longest = Math.max(...train.vehicles.map(({ bodyLength }) => bodyLength));
  const high = Math.min(mostHigh, Math.max(leastHigh, vehiclesHigh * longest));
  const far = high / 2 / Math.tan((fieldDeg * Math.PI) / 360);
  const above = (aboveDeg * Math.PI) / 180;
  const level = far * Math.cos(above);
  return {
    kind: 'place',
    eye: placeMm(x + level * Math.cos(side), y + level * Math.sin(side), z + far * Math.sin(above)),
    target: placeMm(x, y, z),
  };
}

/** A place in m as the scene says it: to a millimetre. */
const placeMm = (x: number, y: number, z: number) => ({ xMm: mm(x), yMm: mm(y), heightMm: mm(z) });
const mm = (metres: number): number => Math.round(metres * 1000);

/** To a hundredth of a second. */
const seconds = (time: number): number => Math.round(time * 100) / 100;

const longWords = (metres: number, { lengthUnit }: Solved['show']): string =>
  lengthUnit === 'mm'
    ? formatLength(metres, { unit: 'm', digits: 1 })
    : formatLength(metres, { unit: 'ft', fraction: 2 });
