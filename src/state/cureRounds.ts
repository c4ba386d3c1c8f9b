import type { StoreApi } from 'zustand/vanilla';
import type { Finding } from '../core/findings/types.ts';
import type { SimHost, TrialResult } from '../sim/types.ts';
import { isAbort } from './aborting.ts';
import type { CureOutcome, SessionState } from './types.ts';

export interface CureRounds {
  /** Works out every cure of the failing and near findings, one after the other, for what the session shows now. */
  start(): void;
  /** Works out one cure now, ahead of the others; null when it cannot be done or something newer took over. */
  first(finding: number, cure: number): Promise<TrialResult | null>;
  cancel(): void;
}

/** The margin the same risk has after a cure, or null when that risk has nothing to say any more. */
export function marginAfter(finding: Finding, result: TrialResult): number | null {
  return result.risks.find((series) => series.risk === finding.risk)?.worst?.margin ?? null;
}

/** Computes cures in the background and writes their outcomes into the session. */
export function createCureRounds(session: StoreApi<SessionState>, host: SimHost): CureRounds {
  let round: AbortController | null = null;

  const outcomeAt = (finding: number, cure: number) => session.getState().cures.get(finding)?.[cure];

  const write = (finding: number, cure: number, change: Partial<CureOutcome>) =>
    session.setState(({ cures }) => {
      const row = cures.get(finding);
      if (!row) return {};
      const next = row.map((outcome, index) => (index === cure ? { ...outcome, ...change } : outcome));
      return { cures: new Map(cures).set(finding, next) };
    });

  const compute = async (finding: number, cure: number, signal: AbortSignal): Promise<TrialResult | null> => {
    const { compiled, trial, result } = session.getState();
    const outcome = outcomeAt(finding, cure);
    if (!compiled || !trial || !result || !outcome) return null;
    write(finding, cure, { state: 'running', progress: 0 });
    try {
      const onProgress = (progress: number) => {
        if (!signal.aborted) write(finding, cure, { progress });
      };
      const cured = await host.tryCure(compiled.scene, trial.id, outcome.cure, { signal, onProgress });
      if (signal.aborted) return null;
      if (!cured) {
        write(finding, cure, { state: 'impossible', progress: 1 });
        return null;
      }
      const margin = marginAfter(result.findings[finding], cured);
      write(finding, cure, { state: 'done', progress: 1, margin, result: cured });
      return cured;
    } catch (error) {
      if (signal.aborted) return null;
      write(finding, cure, { state: isAbort(error) ? 'waiting' : 'impossible', progress: 0 });
      return null;
    }
  };

  const computeRest = async (signal: AbortSignal) => {
    for (const [finding, row] of session.getState().cures) {
      for (let cure = 0; cure < row.length; cure++) {
        if (signal.aborted) return;
        if (outcomeAt(finding, cure)?.state === 'waiting') await compute(finding, cure, signal);
      }
    }
  };

  const cancel = () => {
    round?.abort();
    round = null;
    const unfinished = (outcome: CureOutcome): CureOutcome =>
      outcome.state === 'running' ? { ...outcome, state: 'waiting', progress: 0 } : outcome;
    session.setState(({ cures }) => ({
      cures: new Map([...cures].map(([finding, row]) => [finding, row.map(unfinished)])),
    }));
  };

  return {
    start() {
      cancel();
      const findings = session.getState().result?.findings ?? [];
      const cures = new Map<number, readonly CureOutcome[]>();
      findings.forEach((finding, index) => {
        if (finding.verdict === 'passes' || finding.cures.length === 0) return;
        cures.set(
          index,
          finding.cures.map((cure) => ({ cure, state: 'waiting', margin: null, result: null, progress: 0 })),
        );
      });
      session.setState({ cures });
      round = new AbortController();
      void computeRest(round.signal);
    },
    async first(finding, cure) {
      const outcome = outcomeAt(finding, cure);
      if (outcome?.state === 'done') return outcome.result;
      cancel();
      const mine = new AbortController();
      round = mine;
      const result = await compute(finding, cure, mine.signal);
      if (!mine.signal.aborted) void computeRest(mine.signal);
      return result;
    },
    cancel,
  };
}
