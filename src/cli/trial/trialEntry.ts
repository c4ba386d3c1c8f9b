import {
  describeEvent,
  describeFinding,
  describePass,
  findingUnit,
  jointNumber,
  jointVehicles,
  legAt,
  type Naming,
  ownChainage,
  standingOf,
  vehicleName,
  vehicleNumber,
} from '../../core/findings/index.ts';
import type { Finding } from '../../core/findings/types.ts';
import { riskById } from '../../core/risks/index.ts';
import { frontReach, rearReach } from '../../core/stock/index.ts';
import type { JoinJump } from '../../core/track/types.ts';
import {
  type CompiledTrial,
  namingOf,
  type TakenOver,
  type TrialLeg,
  type TrialResult,
  takenOver,
} from '../../sim/index.ts';
import { amountScales } from '../reportFields.ts';
import type { ReportVerdict, TrialEntry } from './trialReport.ts';

const show = { lengthUnit: 'mm', gradeForm: 'percent' } as const;
const mm = 1e3;

/** One trial and its result as the report says it. */
export function trialEntry(trial: CompiledTrial, result: TrialResult): TrialEntry {
  const { run, findings } = result;
  const names = namingOf(trial, result);
  const closest = run.outcome === 'arrived' ? describePass(findings, names, show) : null;
  const { legs, joints } = trial;
  const at = (chainage: number): Place => placeOf(legs, chainage);
  const atPath = (path: number): Place => at(trial.path.reversed ? trial.path.track.length - path : path);
  const last = run.frames - 1;
  const lead = (frame: number): number => frame * run.vehicles;
  const duration = run.time[last];
  return {
    id: trial.id,
    name: trial.name,
    track: trial.trackId,
    ...(legs && { route: legs.map(routeLeg) }),
    ...(joints && { joints: joints.map(jointEntry) }),
    ...goesOnFrom(takenOver(trial, run)),
    train: trial.trainId,
    vehicles: trial.lastLeads ? names.vehicleNames.toReversed() : [...names.vehicleNames],
    leading: trial.lastLeads ? 'last' : 'first',
    propelled: trial.propelled,
    verdict: verdictOf(result),
    ...(run.outcome === 'arrived' && findings[0] !== undefined ? undecidedOf(findings[0]) : {}),
    ...(closest === null ? {} : { closest }),
    outcome: run.outcome,
    durationS: duration,
    events: run.events.map((event) => {
      const common = { kind: event.kind, timeS: event.time, ...atPath(event.chainage) };
      const told = describeEvent(event, names, show);
      if (event.kind === 'run-in' || event.kind === 'run-out' || event.kind === 'parting') {
        return { ...common, ...jointOf(names, event.subject), forceN: event.value, text: told };
      }
      if (event.kind === 'recoupling') return { ...common, ...jointOf(names, event.subject), text: told };
      const speed = event.kind === 'slip' || event.kind === 'grip' ? { speedMmPerS: event.value * mm } : {};
      return { ...common, ...vehicleOf(names, event.subject), ...speed, text: told };
    }),
    risks: result.risks.flatMap(({ risk }) => {
      const own = findings.filter((finding) => finding.risk === risk);
      const least = own.reduce<Finding | null>(
        (best, one) => (best === null || one.margin < best.margin ? one : best),
        null,
      );
      return least === null
        ? []
        : [{ risk, verdict: least.verdict, ...undecidedOf(least), ...amountsOf(least, names, at) }];
    }),
    findings: findings.map((finding) => {
      const told = describeFinding(finding, names, show);
      return {
        risk: finding.risk,
        verdict: finding.verdict,
        ...undecidedOf(finding),
        ...amountsOf(finding, names, at),
        headline: told.headline,
        cause: told.cause,
        cures: [...told.cures],
        ...reachOf(finding),
      };
    }),
    greatestDraft: peakOf(trial, result, run.draftPeak, 1, atPath, names),
    greatestBuff: peakOf(trial, result, run.buffPeak, -1, atPath, names),
    speeds: {
      greatestMmPerS:
        run.speed.reduce((most, v, i) => (i % run.vehicles === 0 && Math.abs(v) > most ? Math.abs(v) : most), 0) * mm,
      meanMmPerS: duration > 0 ? (Math.abs(run.chainage[lead(last)] - run.chainage[0]) / duration) * mm : 0,
      endMmPerS: run.speed[lead(last)] * mm,
    },
    energy: {
      motorJ: run.energy.motor,
      kineticJ: run.energy.kinetic,
      potentialJ: run.energy.potential,
      storedJ: run.energy.stored,
      rollingJ: run.energy.rolling,
      curveJ: run.energy.curve,
      flangeJ: run.energy.flange,
      couplerJ: run.energy.coupler,
      slipJ: run.energy.slip,
      holdingJ: run.energy.holding,
      residualJ: run.energy.residual,
    },
    model: {
      gravityMPerS2: trial.options.forces.gravity,
      curveFriction: trial.options.forces.curveFriction,
      curveFactor: trial.options.forces.curveFactor,
      flangeFriction: trial.options.forces.flangeFriction,
      stepMs: trial.options.step * 1e3,
      frameMs: trial.options.frameInterval * 1e3,
      keptFrameMs: run.interval * 1e3,
    },
  };
}

/** A place as the report tells it. */
type Place = Pick<TrialEntry['events'][number], 'chainageMm' | 'onTrack'>;

function placeOf(legs: CompiledTrial['legs'], chainage: number): Place {
  const leg = legAt(legs ?? [], chainage);
  const along = { chainageMm: chainage * mm };
  return leg === null
    ? along
    : { ...along, onTrack: { track: leg.trackId, chainageMm: ownChainage(leg, chainage) * mm } };
}

const routeLeg = ({ trackId, from, to, start }: TrialLeg) => ({
  track: trackId,
  fromMm: from * mm,
  toMm: to * mm,
  startMm: start * mm,
});

const jointEntry = ({ chainage, position, heading }: JoinJump) => ({
  chainageMm: chainage * mm,
  gapMm: position * mm,
  turnDeg: (heading * 180) / Math.PI,
});

/** A joint and a vehicle as the report names them. */
const jointOf = (names: Naming, joint: number) => ({
  joint: jointNumber(names, joint),
  vehicles: jointVehicles(names, joint),
});
const vehicleOf = (names: Naming, vehicle: number) => ({
  vehicle: vehicleNumber(names, vehicle),
  vehicles: [vehicleName(names, vehicle)],
});

const undecidedOf = (finding: Finding): { undecided?: true } =>
  standingOf(finding) === 'undecided' ? { undecided: true } : {};

function reachOf({ reach }: Finding): Pick<TrialEntry['findings'][number], 'reach'> {
  if (reach === undefined) return {};
  const { vehicles, grade, chainage, needed, available } = reach;
  return {
    reach: {
      vehicles,
      gradePercent: grade === null ? null : grade * 100,
      chainageMm: chainage * mm,
      neededN: needed,
      availableN: available,
    },
  };
}

/** A trial fails when a risk does, and when the train does not arrive. */
export function verdictOf({ run, findings }: TrialResult): ReportVerdict {
  if (run.outcome !== 'arrived') return 'fails';
  // Findings come in order of gravity.
  return findings[0]?.verdict ?? 'passes';
}

function amountsOf(finding: Finding, names: Naming, at: (chainage: number) => Place) {
  const { unit, subject } = riskById(finding.risk);
  const [suffix, factor] = amountScales[unit];
  const [valueSuffix, valueFactor] = amountScales[findingUnit(finding)];
  const vehicle = subject === 'locomotive' ? (names.locomotives?.[finding.subject] ?? 0) : finding.subject;
  const amounts: readonly (readonly [key: string, value: number])[] = [
    [`margin${suffix}`, finding.margin * factor],
    [`value${valueSuffix}`, finding.value * valueFactor],
    [`limit${valueSuffix}`, finding.limit * valueFactor],
  ];
  const { range } = finding;
  return {
    ...(subject === 'joint' ? jointOf(names, finding.subject) : vehicleOf(names, vehicle)),
    ...at(finding.chainage),
    timeS: finding.time,
    // A margin without bound (nothing is asked of the engine) has no number in JSON.
    ...Object.fromEntries(amounts.filter(([, value]) => Number.isFinite(value))),
    ...(range?.every(Number.isFinite) ? { [`range${suffix}`]: range.map((one) => one * factor) } : {}),
  };
}

/** The greatest pull or push (sign) of all joints and frames, with its place midway between the two body ends. */
function peakOf(
  trial: CompiledTrial,
  { run }: TrialResult,
  peaks: Float64Array,
  sign: 1 | -1,
  at: (path: number) => Place,
  names: Naming,
): TrialEntry['greatestDraft'] {
  let peak = -1;
  let most = 0;
  for (let i = 0; i < peaks.length; i++) {
    if (sign * peaks[i] > most) {
      most = sign * peaks[i];
      peak = i;
    }
  }
  if (peak < 0) return null;
  const frame = Math.floor(peak / (run.vehicles - 1));
  const joint = peak % (run.vehicles - 1);
  const { vehicles } = trial.train;
  const ahead = run.chainage[frame * run.vehicles + joint] - rearReach(vehicles[joint]);
  const behind = run.chainage[frame * run.vehicles + joint + 1] + frontReach(vehicles[joint + 1]);
  return {
    forceN: sign * most,
    ...jointOf(names, joint),
    ...at((ahead + behind) / 2),
    timeS: run.time[frame],
  };
}

function goesOnFrom(taken: TakenOver | null): Pick<TrialEntry, 'goesOnFrom'> {
  if (taken === null) return {};
  const { id, chainage, stretched, bunched, slack } = taken;
  return { goesOnFrom: { trial: id, chainageMm: chainage * mm, stretched, bunched, slack } };
}
