import {
  closestCall,
  describeFinding,
  describePass,
  legAt,
  type Naming,
  ownChainage,
  type Show,
  type Standing,
  standingOf,
  standings,
} from '../../core/findings/index.ts';
import type { Finding } from '../../core/findings/types.ts';
import { riskById } from '../../core/risks/index.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { Scene } from '../../scene/index.ts';
import { cancelled } from '../cancelled.ts';
import { compileScene } from '../compileScene.ts';
import { compileTrial } from '../compileTrial.ts';
import { NotReached } from '../handOver.ts';
import { namingOf } from '../naming.ts';
import type { CompiledScene, CompiledTrial, SimHost, TrialResult } from '../types.ts';
import { climbOf, withEveryWorking } from './everyWorking.ts';
import type { PageMark, PageTrial, Visitor } from './types.ts';

/** Findings of two trials less than this apart along the track, m, are one place to a person with a screwdriver. */
const samePlace = 0.1;

/** Most places that are numbered: more than these on one drawing cannot be told apart. */
const mostMarks = 24;

export interface PageHooks {
  /** Share done, 0 to 1. */
  readonly onProgress?: (done: number) => void;
  readonly signal?: AbortSignal;
}

/** What the trials of a page came to. */
export interface PageTrials {
  readonly scene: Scene;
  readonly trials: readonly PageTrial[];
  readonly marks: readonly PageMark[];
  readonly visitors: readonly Visitor[];
}

interface Grief {
  readonly trial: CompiledTrial;
  readonly naming: Naming;
  readonly finding: Finding;
  readonly trackId: string;
  readonly chainage: number;
  readonly row: number;
}

/**
 * Runs every train over every track it has a trial on, pulled and propelled, both ways, and numbers the places where they come to grief, the gravest first. What
 * fails, may fail or comes near is a place; a trial that is not reached, or cannot be run, says why. Rejects with an AbortError when called off.
 */
export async function pageTrials(scene: Scene, show: Show, host: SimHost, hooks: PageHooks = {}): Promise<PageTrials> {
  const all = withEveryWorking(scene);
  const compiled = compileScene(all);
  const own = new Set(scene.trials.map(({ id }) => id));
  const rows: Omit<PageTrial, 'marks'>[] = [];
  const griefs: Grief[] = [];
  for (const [index, { id, name, train }] of all.trials.entries()) {
    if (hooks.signal?.aborted) throw cancelled();
    const trial = compileTrial(compiled, id);
    const row = {
      name,
      train: all.trains.find((one) => one.id === train)?.name ?? train,
      propelled: trial.propelled,
      climbs: climbOf(trial) > 0,
      own: own.has(id),
    };
    const told = await solved(all, id, host, {
      ...hooks,
      onProgress: (done) => hooks.onProgress?.((index + done) / all.trials.length),
    });
    if (typeof told === 'string') rows.push({ ...row, standing: 'fails', words: told });
    else {
      const naming = namingOf(trial, told);
      rows.push({ ...row, ...verdictOf(told, naming, show) });
      for (const finding of told.findings) {
        if (standingOf(finding) === 'passes') continue;
        griefs.push({ trial, naming, finding, ...placeOf(trial, finding), row: rows.length - 1 });
      }
    }
  }
  const groups = grouped(griefs).slice(0, mostMarks);
  return {
    scene: all,
    trials: rows.map((row, index) => ({
      ...row,
      marks: groups.flatMap((group, at) => (group.some((one) => one.row === index) ? [at + 1] : [])),
    })),
    marks: groups.map((group, at) => markOf(group, at + 1, compiled, show, rows)),
    visitors: visitorsOf(griefs, show),
  };
}

/** A trial's result; why there is none, in words. */
async function solved(scene: Scene, id: string, host: SimHost, hooks: PageHooks): Promise<TrialResult | string> {
  try {
    return await host.runTrial(scene, id, hooks);
  } catch (error) {
    if (error instanceof NotReached || (error instanceof Error && error.name !== 'AbortError')) return error.message;
    throw error;
  }
}

function verdictOf(result: TrialResult, naming: Naming, show: Show): { standing: Standing; words: string } {
  const [gravest] = result.findings;
  const pass = describePass(result.findings, naming, show);
  if (pass !== null && result.run.outcome === 'arrived') {
    const closest = closestCall(result.findings);
    return { standing: closest?.verdict === 'near' ? 'near' : 'passes', words: pass };
  }
  if (gravest === undefined || pass !== null) return { standing: 'fails', words: outcomes[result.run.outcome] };
  const { headline, margin } = describeFinding(gravest, naming, show);
  return { standing: standingOf(gravest), words: `${headline} Margin ${margin}.` };
}

const outcomes: Readonly<Record<TrialResult['run']['outcome'], string>> = {
  arrived: 'Arrives.',
  stalled: 'Stalls.',
  parted: 'Parts.',
  'end-of-track': 'Runs off the end of the track.',
  'time-limit': 'Has not arrived when its time is over.',
};

/** The track a finding is on, and its chainage there, m. */
function placeOf(trial: CompiledTrial, { chainage }: Finding): Pick<Grief, 'trackId' | 'chainage'> {
  const leg = legAt(trial.legs ?? [], chainage);
  return leg === null
    ? { trackId: trial.trackId, chainage }
    : { trackId: leg.trackId, chainage: ownChainage(leg, chainage) };
}

const gravity = ({ finding }: Grief): number => standings.indexOf(standingOf(finding));
const share = ({ finding }: Grief): number => finding.margin / riskById(finding.risk).plenty;
const graver = (a: Grief, b: Grief): number => gravity(a) - gravity(b) || share(a) - share(b);

/** What is wrong with the pull is wrong with the whole climb: where it shows first hangs on the load, so that a track has one place of it. */
const isSame = (one: Grief, other: Grief): boolean =>
  one.finding.risk === other.finding.risk &&
  one.trackId === other.trackId &&
  (riskById(one.finding.risk).subject === 'locomotive' || Math.abs(one.chainage - other.chainage) < samePlace);

/** Griefs of one risk at one place together, each group and all groups the gravest first. */
function grouped(griefs: readonly Grief[]): Grief[][] {
  const groups: Grief[][] = [];
  for (const grief of [...griefs].sort(graver)) {
    const same = groups.find(([first]) => isSame(first, grief));
    if (same) same.push(grief);
    else groups.push([grief]);
  }
  return groups;
}

function markOf(
  group: readonly Grief[],
  number: number,
  compiled: CompiledScene,
  show: Show,
  rows: readonly Pick<PageTrial, 'name'>[],
): PageMark {
  const [{ naming, finding, trackId, chainage }] = group;
  const track = compiled.tracks.get(trackId);
  if (track === undefined) throw new RangeError(`The scene has no track "${trackId}".`);
  const { x, y, z } = trackPoint(track, Math.max(0, Math.min(track.length, chainage)));
  const { title, headline, cause, margin, cures } = describeFinding(finding, naming, show);
  return {
    number,
    trackId,
    chainage,
    place: [x, y, z],
    risk: finding.risk,
    standing: standingOf(finding),
    title,
    headline,
    cause,
    margin,
    cures,
    trials: [...new Set(group.map(({ row }) => rows[row].name))],
  };
}

/** Which vehicles have to keep off which working, for what fails or may fail through them: for both of a joint, for none where the engine is what fails. */
function visitorsOf(griefs: readonly Grief[], show: Show): Visitor[] {
  const not = new Map<string, Map<string, Grief>>();
  for (const grief of griefs) {
    const { trial, finding } = grief;
    const kind = riskById(finding.risk).subject;
    if (kind === 'locomotive' || !['fails', 'undecided'].includes(standingOf(finding))) continue;
    const names = trial.train.vehicles.map(({ name }) => name);
    const through = kind === 'joint' ? [names[finding.subject], names[finding.subject + 1]] : [names[finding.subject]];
    for (const vehicle of new Set(through)) {
      const own = not.get(vehicle) ?? new Map<string, Grief>();
      const key = `${workingWords(trial)}: ${finding.risk}`;
      const before = own.get(key);
      if (before === undefined || graver(grief, before) < 0) own.set(key, grief);
      not.set(vehicle, own);
    }
  }
  return [...not].map(([vehicle, own]) => ({
    vehicle,
    not: [...own.values()].sort(graver).map(({ trial, naming, finding }) => ({
      working: workingWords(trial),
      why: describeFinding(finding, naming, show).headline,
      standing: standingOf(finding),
    })),
  }));
}

const workingWords = (trial: CompiledTrial): string => {
  const climb = climbOf(trial);
  return `${trial.propelled ? 'propelled' : 'pulled'} ${climb === 0 ? 'on the level' : climb > 0 ? 'up' : 'down'}`;
};
