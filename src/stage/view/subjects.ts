import type { Finding } from '../../core/findings/types.ts';
import { riskById } from '../../core/risks/index.ts';
import type { RiskId } from '../../core/risks/types.ts';
import type { SessionState } from '../../state/types.ts';

/** True when a risk is about the joint between two vehicles. */
const ofJoint = (risk: RiskId): boolean => riskById(risk).subject === 'joint';

/** Path chainage of a track chainage of the trial, m; the same formula leads back. */
export function otherChainage(trial: NonNullable<SessionState['trial']>, chainage: number): number {
  return trial.path.reversed ? trial.path.track.length - chainage : chainage;
}

/** An audience guesses how this comes out: nothing on the stage gives it away. */
const covered = ({ tour }: SessionState): boolean => tour.presenting && !tour.told;

/** Index of the finding that the stage names in full. Before an audience none is: what stands under the picture is large enough to be read. */
export const namedFinding = (state: SessionState): number | null =>
  state.tour.presenting ? null : foremostFinding(state);

/** Index of the finding that is in question: the chosen one unless it passes, else the gravest that fails. */
export function foremostFinding(state: SessionState): number | null {
  const findings = state.result?.findings ?? [];
  const chosen = state.chosenFinding === null ? undefined : findings[state.chosenFinding];
  if (chosen !== undefined && chosen.verdict !== 'passes') return state.chosenFinding;
  const failing = findings.findIndex((finding) => finding.verdict === 'fails');
  return failing < 0 ? null : failing;
}

/** Index of the gravest near finding that is not named already. */
export function nearFinding(state: SessionState): number | null {
  if (state.tour.presenting) return null;
  const named = namedFinding(state);
  const index = (state.result?.findings ?? []).findIndex((one, i) => one.verdict === 'near' && i !== named);
  return index < 0 ? null : index;
}

/** The joint under the ring: the chosen one, else the one that the named finding is about. */
export function ringedJoint(state: SessionState): number | null {
  const joints = (state.trial?.train.vehicles.length ?? 1) - 1;
  const held = (joint: number | null): number | null => (joint !== null && joint < joints ? joint : null);
  if (state.chosenJoint !== null) return held(state.chosenJoint);
  const named = namedFinding(state);
  return named === null ? null : held(jointOf(state.result?.findings[named]));
}

export function jointOf(finding: Finding | undefined): number | null {
  return finding !== undefined && ofJoint(finding.risk) ? finding.subject : null;
}

/** Whether a failing finding is about a joint. */
export function jointFails(state: SessionState, joint: number): boolean {
  if (covered(state)) return false;
  return (state.result?.findings ?? []).some((one) => one.verdict === 'fails' && jointOf(one) === joint);
}

/** Risks that compare two heads in height, and those that compare two ends across the track. */
const upRisks: readonly RiskId[] = ['override', 'parting'];
const asideRisks: readonly RiskId[] = ['buffer-lock', 'coupler-swing'];

/** Which way a joint fails: in height, across the track. */
export function jointFailsHow(state: SessionState, joint: number): { readonly up: boolean; readonly aside: boolean } {
  const failing = (state.result?.findings ?? []).filter((one) => one.verdict === 'fails' && jointOf(one) === joint);
  return {
    up: failing.some(({ risk }) => upRisks.includes(risk)),
    aside: failing.some(({ risk }) => asideRisks.includes(risk)),
  };
}

/** A support of the railway: its number among those of its track, counted from 0. */
export interface NamedSupport {
  readonly trackId: string;
  readonly support: number;
}

/** Supports that failing findings name. */
export function blamedSupports({ trial, result }: SessionState): NamedSupport[] {
  if (trial === null) return [];
  return (result?.findings ?? []).flatMap(({ verdict, causes }) =>
    verdict !== 'fails'
      ? []
      : causes.flatMap((cause) =>
          cause.kind === 'support-off'
            ? { trackId: trial.legs?.[cause.leg ?? 0]?.trackId ?? trial.trackId, support: cause.support }
            : [],
        ),
  );
}

/** Supports that need a hand: those that a survey points at while one is looked at, else those that failing findings name. */
export function markedSupports(state: SessionState): readonly NamedSupport[] {
  const { surveyed } = state;
  if (covered(state)) return [];
  if (surveyed !== null) return surveyed.pointed.map((support) => ({ trackId: surveyed.trackId, support }));
  return blamedSupports(state);
}
