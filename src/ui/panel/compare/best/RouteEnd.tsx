import type { Knob } from '../../../../state/study/index.ts';

interface RouteEndProps {
  readonly kept: boolean;
  readonly onKeep: (kept: boolean) => void;
  /** Why nothing closes the line of itself; null where something does. */
  readonly why: string | null;
  /** What is worked out, three at most, and what could be. */
  readonly solved: readonly string[];
  readonly free: readonly Knob[];
  readonly onSolve: (solved: readonly string[]) => void;
}

/** A place has two numbers, and a direction. */
const mostSolved = 3;

/** Whether the line ends where it ends now, and which of its numbers are worked out for that. */
export function RouteEnd({ kept, onKeep, why, solved, free, onSolve }: RouteEndProps) {
  const fields = kept ? [...solved, ...(solved.length < mostSolved ? [''] : [])] : [];
  const choose = (k: number, at: string) => {
    const next = [...solved.slice(0, k), ...(at === '' ? [] : [at]), ...solved.slice(k + 1)];
    onSolve(next);
  };
  return (
    <>
      <label className="study-tick">
        <input type="checkbox" checked={kept} onChange={(event) => onKeep(event.target.checked)} />
        The line ends where it ends now
      </label>
      {kept && why !== null && solved.length === 0 && <p className="quiet about">{why}</p>}
      {kept && (
        <fieldset className="route-solved" aria-label="Worked out for that">
          <legend>Worked out for that</legend>
          {fields.map((at, k) => (
            <select
              // biome-ignore lint/suspicious/noArrayIndexKey: a field is its place in the list
              key={k}
              aria-label={`Worked out, ${k + 1}`}
              value={at}
              onChange={(event) => choose(k, event.target.value)}
            >
              <option value="">{k < solved.length ? 'nothing' : 'one more …'}</option>
              {free
                .filter((one) => one.at === at || !solved.includes(one.at))
                .map((one) => (
                  <option key={one.at} value={one.at}>
                    {one.label}
                  </option>
                ))}
            </select>
          ))}
        </fieldset>
      )}
    </>
  );
}
