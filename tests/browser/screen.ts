import { isDeepStrictEqual } from 'node:util';
import type { Page } from 'playwright-core';
import { type Standing, standingOf } from '../../src/core/findings/index.ts';
import type { Verdict } from '../../src/core/findings/types.ts';
import type { RiskId } from '../../src/core/risks/types.ts';
import type { CameraName, Problem } from '../../src/state/types.ts';
import { type Opened, type OpenOptions, openApp } from './harness.ts';

/** How long a page may take over anything, ms: on a shared machine without a graphics card one picture takes seconds. */
export const patience = 100_000;

/** What the page shows now, as plain data: the part of its state that a person could tell from the screen. */
export interface Screen {
  readonly scene: string | null;
  readonly trialId: string | null;
  /** Of the trial that is meant; null until it is solved. */
  readonly findings: readonly ShownFinding[] | null;
  readonly progress: number | null;
  readonly problem: Problem | null;
  readonly chosenFinding: number | null;
  readonly chosenJoint: number | null;
  readonly ghost: { readonly finding: number; readonly cure: number; readonly margin: number | null } | null;
  readonly camera: CameraName;
  readonly lensOpen: boolean;
  readonly axis: 'chainage' | 'time';
  readonly lengthUnit: 'mm' | 'in';
  readonly chapter: string;
  readonly palette: boolean;
  readonly time: number;
  readonly duration: number;
  readonly playing: boolean;
  readonly rate: number;
  /** What the stage has drawn; null before its first picture. */
  readonly stage: {
    readonly time: number;
    readonly camera: string | null;
    readonly eye: readonly number[];
    readonly firstVehicle: readonly number[] | null;
    readonly vehicles: number;
    readonly lens: { readonly joint: number; readonly share: number } | null;
  } | null;
}

export interface ShownFinding {
  readonly risk: RiskId;
  readonly verdict: Verdict;
  readonly subject: number;
  readonly time: number;
  readonly chainage: number;
  readonly value: number;
  readonly limit: number;
  readonly margin: number;
  readonly range: readonly [number, number] | null;
}

/** Reads the screen. */
export const read = (page: Page): Promise<Screen> =>
  page.evaluate((): Screen => {
    const { session, playback } = window.gradewright!;
    const { result, ghost, trialId } = session;
    const stage = window.__stage;
    const about = ghost && result?.findings[ghost.finding].risk;
    return {
      scene: session.scene?.name ?? null,
      trialId,
      findings:
        result?.trialId === trialId && session.progress === null
          ? result.findings.map(({ risk, verdict, subject, time, chainage, value, limit, margin, range }) => {
              return { risk, verdict, subject, time, chainage, value, limit, margin, range };
            })
          : null,
      progress: session.progress,
      problem: session.problem,
      chosenFinding: session.chosenFinding,
      chosenJoint: session.chosenJoint,
      ghost: ghost && {
        finding: ghost.finding,
        cure: ghost.cure,
        margin: ghost.result.risks.find(({ risk }) => risk === about)?.worst?.margin ?? null,
      },
      camera: session.camera,
      lensOpen: session.lens.open,
      axis: session.axis,
      lengthUnit: session.lengthUnit,
      chapter: session.chapter,
      palette: session.palette,
      time: playback.time,
      duration: playback.duration,
      playing: playback.playing,
      rate: playback.rate,
      stage: stage
        ? {
            time: stage.time,
            camera: stage.camera,
            eye: [...stage.eye],
            firstVehicle: stage.firstVehicle && [...stage.firstVehicle],
            vehicles: stage.vehicles,
            lens: stage.lens,
          }
        : null,
    };
  });

/** Between two looks at the screen, ms. */
const pause = 150;

/** Waits until the screen is as expected, and gives it. After all patience it throws with what was there instead. */
export async function until(page: Page, expected: Partial<Screen> | ((screen: Screen) => boolean)): Promise<Screen> {
  const asExpected = (screen: Screen): boolean =>
    typeof expected === 'function'
      ? expected(screen)
      : (Object.keys(expected) as (keyof Screen)[]).every((key) => isDeepStrictEqual(screen[key], expected[key]));
  // A page that was loaded anew first looks at what was kept on this machine.
  await page.waitForFunction(() => window.gradewright !== undefined, undefined, { timeout: patience });
  const end = Date.now() + patience;
  for (;;) {
    const screen = await read(page);
    if (asExpected(screen)) return screen;
    if (Date.now() > end) {
      const wanted = typeof expected === 'function' ? expected.toString() : JSON.stringify(expected);
      throw new Error(`The screen never came to ${wanted}; it shows ${JSON.stringify(screen)}`);
    }
    await new Promise((resolve) => setTimeout(resolve, pause));
  }
}

/** Waits until a trial is solved and drawn. */
export const untilSolved = (page: Page, trialId?: string): Promise<Screen> =>
  until(page, (now) => now.findings !== null && now.stage !== null && (trialId ?? now.trialId) === now.trialId);

/** Opens the built app and waits until the trial it opens with is solved and drawn. */
export async function openSolved(options: OpenOptions = {}): Promise<Opened> {
  const opened = await openApp(options);
  try {
    opened.page.setDefaultTimeout(patience);
    await opened.page.waitForFunction(() => window.gradewright?.session.result && window.__stage, null, {
      timeout: patience,
    });
    await untilSolved(opened.page);
    return opened;
  } catch (problem) {
    const heard = opened.complaints.join('\n');
    await opened.close();
    throw heard === '' ? problem : new Error(`The page complained:\n${heard}`, { cause: problem });
  }
}

/** The finding that fails and is told first. Throws when none fails. */
export function failing({ findings }: Screen): ShownFinding {
  const first = findings?.[0];
  if (first?.verdict !== 'fails') throw new Error('The trial on show does not fail.');
  return first;
}

/** How many findings fail, are undecided, come near and pass, as the ledger's head says it. */
export function countWords({ findings }: Screen): RegExp {
  const count = (standing: Standing) => findings?.filter((one) => standingOf(one) === standing).length ?? 0;
  const parts = [
    [count('fails'), 'fails?'],
    [count('undecided'), 'undecided'],
    [count('near'), 'near'],
    [count('passes'), 'pass(?:es)?'],
  ] as const;
  return new RegExp(`^${parts.flatMap(([n, words]) => (n > 0 ? [`${n} ${words}`] : [])).join(', ')}$`);
}

/** Drops a railway on the page as a file, and waits until it is open and its trial solved. */
export async function dropScene(
  page: Page,
  scene: { readonly name: string; readonly opensWith?: string | undefined },
): Promise<void> {
  await page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], 'dropped.json'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
  }, JSON.stringify(scene));
  await until(page, { scene: scene.name });
  await untilSolved(page, scene.opensWith);
}
