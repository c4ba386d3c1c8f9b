import { type RefObject, useLayoutEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { StoreApi } from 'zustand/vanilla';
import { referenceOf, referencePlaces, referenceVehicle } from '../../../state/index.ts';
import type { Axis, SessionState } from '../../../state/types.ts';
import type { BandActions } from '../actions.ts';
import { contrastInks, plainInks } from '../carpet/colourScales.ts';
import { groundOf } from '../section/ground.ts';
import { type AxisScale, keepInside, type Span, showsAll } from './axis.ts';
import type { BadSupport, BandFrame, Beside, Fonts, PaintMode } from './bandFrame.ts';
import { layoutOf } from './layout.ts';
import type { Live } from './live.ts';
import { legChainage, surveyedAlong } from './routeDrawing.ts';
import { type TrialView, viewTrial } from './trialView.ts';
import type { BoxSize } from './useBox.ts';
import { useMedia } from './useMedia.ts';

/** Same condition as the tablet measures of the tokens. */
const NARROW = '(max-width: 1180px), (pointer: coarse)';

const fallbackFonts: Fonts = { letter: 'Arial Narrow, sans-serif', ui: 'Arial, sans-serif' };

/** The supports that failing findings blame, the chosen finding's first, each once. */
export function badSupports(view: TrialView, chosenFinding: number | null): BadSupport[] {
  const { legs } = view.trial.path;
  const findings = [...(view.result?.findings ?? []).entries()].sort(
    ([a], [b]) => Number(b === chosenFinding) - Number(a === chosenFinding) || a - b,
  );
  const bad: BadSupport[] = [];
  for (const [, finding] of findings) {
    if (finding.verdict !== 'fails') continue;
    for (const cause of finding.causes) {
      if (cause.kind !== 'support-off') continue;
      const { support: number, leg, departure } = cause;
      if (bad.some((one) => one.support === number && one.leg === leg)) continue;
      const on = leg === undefined ? view.track : legs?.[leg]?.track;
      const supports = on?.spec.profile.strip?.supports ?? [];
      const support = supports.find((one, index) => (one.number ?? index) === number);
      if (!support) continue;
      if (leg === undefined) bad.push({ support: number, chainage: support.chainage, departure });
      else bad.push({ support: number, leg, chainage: legChainage(legs?.[leg], support.chainage), departure });
    }
  }
  return bad;
}

/** What chainages count along: the track's name, or a route's from the first to the last of its tracks. */
function wayName({ trackId, legs }: TrialView['trial'], scene: SessionState['scene']): string {
  if (legs === undefined) return scene?.tracks.find((one) => one.id === trackId)?.name ?? 'track';
  const [first, last] = [legs[0], legs[legs.length - 1]];
  return first === last ? first.trackName : `${first.trackName} to ${last.trackName}`;
}

/**
 * All that the rows share, made anew only when something in it changes. Null without a trial or before the size is known.
 * `editLength`, m: of the track under the hand, null when none is. What else of it changes is the section's alone, so that the other rows keep still.
 */
export function useBandFrame(
  session: StoreApi<SessionState>,
  actions: BandActions,
  live: Live,
  root: RefObject<HTMLElement | null>,
  box: BoxSize,
  editLength: number | null,
): BandFrame | null {
  const trial = useStore(session, (state) => state.trial);
  const result = useStore(session, (state) => state.result);
  const ghostState = useStore(session, (state) => state.ghost);
  const besideState = useStore(session, (state) => state.beside);
  const ownSurvey = useStore(session, (state) => state.surveyed);
  const surveyed = useMemo(() => (trial && ownSurvey ? surveyedAlong(ownSurvey, trial) : null), [trial, ownSurvey]);
  const chosenJoint = useStore(session, (state) => state.chosenJoint);
  const chosenFinding = useStore(session, (state) => state.chosenFinding);
  const kind = useStore(session, (state) => state.axis);
  const lengthUnit = useStore(session, (state) => state.lengthUnit);
  const gradeForm = useStore(session, (state) => state.gradeForm);
  const scene = useStore(session, (state) => state.compiled?.scene ?? null);

  const narrow = useMedia(NARROW);
  const coarse = useMedia('(pointer: coarse)');
  const moreContrast = useMedia('(prefers-contrast: more)');
  const forced = useMedia('(forced-colors: active)');
  const print = useMedia('print');
  const paint: PaintMode = forced || print ? 'pattern' : moreContrast ? 'contrast' : 'plain';

  const [fonts, setFonts] = useState(fallbackFonts);
  useLayoutEffect(() => {
    if (!root.current) return;
    const style = getComputedStyle(root.current);
    const read = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise;
    setFonts({ letter: read('--letter', fallbackFonts.letter), ui: read('--ui', fallbackFonts.ui) });
  }, [root]);

  const view = useMemo(
    () => (trial ? viewTrial(trial, result?.trialId === trial.id ? result : null) : null),
    [trial, result],
  );
  const ghost = useMemo(() => (ghostState ? viewTrial(ghostState.trial, ghostState.result) : null), [ghostState]);

  const beside = useMemo<Beside | null>(
    () => (besideState ? { name: besideState.name, view: viewTrial(besideState.trial, besideState.result) } : null),
    [besideState],
  );

  // A span belongs to the track it was chosen on; on another one all is shown again.
  const [spans, setSpans] = useState<{ readonly track: string; readonly span: Readonly<Record<Axis, Span | null>> }>({
    track: '',
    span: { chainage: null, time: null },
  });
  const trackId = trial?.legs?.map((leg) => `${leg.trackId} ${leg.from}`).join() ?? trial?.trackId ?? '';
  const chosenSpan = spans.track === trackId ? spans.span[kind] : null;
  const layout = useMemo(
    () => layoutOf(box.width, narrow, box.density, coarse),
    [box.width, box.density, narrow, coarse],
  );
  const end = kind === 'time' ? (view?.motion?.time.at(-1) ?? 0) : (editLength ?? view?.track.length ?? 0);
  const full = useMemo<Span>(() => ({ from: 0, to: end > 0 ? end : 1 }), [end]);
  const axis = useMemo<AxisScale>(
    () => ({ kind, span: chosenSpan ? keepInside(chosenSpan, full) : full, width: layout.body }),
    [kind, chosenSpan, full, layout.body],
  );
  const setSpan = useMemo(
    () => (span: Span | null) => {
      setSpans((now) => ({
        track: trackId,
        span: {
          ...(now.track === trackId ? now.span : { chainage: null, time: null }),
          [kind]: span && !showsAll(span, full) ? span : null,
        },
      }));
    },
    [trackId, kind, full],
  );

  const show = useMemo(() => ({ lengthUnit, gradeForm }), [lengthUnit, gradeForm]);
  const rides = useMemo(
    () => referenceOf({ trial: view?.trial ?? null, result: view?.result ?? null, chosenJoint, chosenFinding }),
    [view, chosenJoint, chosenFinding],
  );
  const reference = useMemo(
    () => (view?.result ? referencePlaces(view.trial, view.result, rides) : null),
    [view, rides],
  );
  const bad = useMemo(() => (view ? badSupports(view, chosenFinding) : []), [view, chosenFinding]);

  return useMemo(() => {
    if (!view || box.width === 0) return null;
    return {
      view,
      ghost,
      beside,
      surveyed,
      axis,
      full,
      ground: groundOf(axis, view.motion, reference),
      reference,
      rides,
      vehicle: view.result ? referenceVehicle(view.result, rides) : 0,
      chosenJoint: rides.kind === 'joint' ? rides.joint : null,
      chosenFinding,
      bad,
      layout,
      show,
      ratio: scene?.scale.ratio ?? null,
      trackName: wayName(view.trial, scene),
      live,
      inks: paint === 'contrast' ? contrastInks : plainInks,
      paint,
      fonts,
      actions,
      setSpan,
    };
  }, [
    view,
    ghost,
    beside,
    surveyed,
    axis,
    full,
    rides,
    reference,
    chosenFinding,
    bad,
    layout,
    show,
    scene,
    live,
    paint,
    fonts,
    actions,
    setSpan,
    box.width,
  ]);
}
