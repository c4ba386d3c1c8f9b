import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import type { Track } from '../../../core/track/types.ts';
import { chosenSpan, moveWith, spanWords, supportStepMm, upTo } from '../../../state/route/index.ts';
import { removeSupports, type SceneTrack, type SupportSpan, setProfilePoint } from '../../../state/routeEdits/index.ts';
import type { BandFrame, SectionEdit } from '../frame/bandFrame.ts';
import type { Comb } from '../section/comb.ts';
import type { Ground } from '../section/ground.ts';
import type { ProfileDrawing } from '../section/profileDrawing.ts';
import { handEdit, type Moved } from './handDrag.ts';
import { handleFigures, handleLabel, handleName } from './handleWords.ts';
import { handleKey, type SectionHandle, sectionHandles } from './sectionHandles.ts';
import { nearestTooth } from './supportHand.ts';
import { useHandDrag } from './useHandDrag.ts';
import './handles.css';

interface SectionHandlesProps {
  readonly frame: BandFrame;
  readonly edit: SectionEdit;
  readonly ground: Ground;
  readonly profile: ProfileDrawing;
  readonly comb: Comb | null;
  readonly height: number;
  /** The line as it was when a hand took hold, for as long as it is to be seen. */
  readonly onOld: (track: Track | null) => void;
}

interface Held {
  readonly handle: SectionHandle;
  readonly track: SceneTrack;
  /** mm of the railway a pixel, along and upwards. */
  readonly along: number;
  readonly up: number;
  /** Which way it went first: it keeps to that. */
  way: 'along' | 'up' | null;
  /** The chosen supports that it is one of: they go with it. */
  readonly span: SupportSpan | null;
}

/** How long the old line is still seen after the hand let go, ms. */
const lingers = 400;
/** A slow hand: with Shift a pixel moves a tenth. */
const slow = 0.1;
/** Steps of the arrow keys: places, heights and curve lengths, mm; supports, mm. */
const steps = { point: 1, curve: 10, support: supportStepMm } as const;

/** What of the section can be dragged: grade points, the ends of vertical curves, supports. */
export function SectionHandles({ frame, edit, ground, profile, comb, height, onOld }: SectionHandlesProps) {
  const { axis, show, actions } = frame;
  const { file, track } = edit;
  const drawing = useRef<SVGSVGElement>(null);
  const held = useRef<Held | null>(null);
  /** The support pressed last: where Shift begins. */
  const pressed = useRef<number | null>(null);
  const linger = useRef<ReturnType<typeof setTimeout> | null>(null);
  const [heldKey, setHeldKey] = useState<string | null>(null);
  const [focused, setFocused] = useState<string | null>(null);
  const [support, setSupport] = useState(0);
  const [refusal, setRefusal] = useState<string | null>(null);
  const handles = useMemo(() => sectionHandles(file, track), [file, track]);
  useEffect(() => () => void (linger.current && clearTimeout(linger.current)), []);

  const span = chosenSpan(edit.chosen, file);
  const spanAt = (index: number) => (span && span.from <= index && index <= span.to ? span : null);
  const spanOf = (handle: SectionHandle) => (handle.kind === 'support' ? spanAt(handle.index) : null);
  const extend = (start: number, head: number) => actions.chooseSupports(upTo(edit.chosen, file, start, head));
  const put = (from: SceneTrack, handle: SectionHandle, moved: Moved, together: SupportSpan | null): string | null => {
    const wanted = handEdit(from, handle, moved);
    return actions.attempt(handleLabel(handle, together), (scene) =>
      wanted.kind === 'support'
        ? moveWith(scene, file.id, wanted.index, wanted.offMm, together)
        : setProfilePoint(scene, file.id, wanted.index, wanted.change),
    );
  };
  const release = () => {
    held.current = null;
    setHeldKey(null);
    setRefusal(null);
    if (linger.current) clearTimeout(linger.current);
    linger.current = setTimeout(() => onOld(null), lingers);
  };
  useHandDrag(drawing, {
    take(key) {
      const handle = handles.find((one) => handleKey(one) === key);
      if (!handle) return false;
      const perMm = handle.kind === 'support' ? (comb?.perMillimetre ?? 1) : profile.perMetre / 1000;
      const along = ((axis.span.to - axis.span.from) * 1000) / axis.width;
      held.current = { handle, track: file, along, up: 1 / perMm, way: null, span: spanOf(handle) };
      if (linger.current) clearTimeout(linger.current);
      onOld(track);
      setHeldKey(key);
      actions.beginGesture();
      return true;
    },
    move(dx, dy, { alt, shift }) {
      const now = held.current;
      if (!now) return;
      const way = now.handle.kind !== 'curve' ? (now.way ?? (Math.abs(dx) > Math.abs(dy) ? 'along' : 'up')) : 'along';
      now.way = way;
      if (now.handle.kind === 'support' && way === 'along') {
        const from = now.handle.index;
        const x = ground.xsOf(now.handle.atMm / 1000)[0] ?? 0;
        actions.chooseSupports({ trackId: file.id, anchor: from, head: nearestTooth(comb, x + dx, from) });
        return;
      }
      const pace = shift ? slow : 1;
      setRefusal(
        put(
          now.track,
          now.handle,
          {
            alongMm: way === 'along' ? dx * now.along * pace : 0,
            upMm: way === 'up' ? -dy * now.up * pace : 0,
            snaps: !alt,
          },
          now.span,
        ),
      );
    },
    press(key, { shift }) {
      const handle = handles.find((one) => handleKey(one) === key);
      if (handle?.kind !== 'support') return;
      if (edit.takesSeveral) extend(handle.index, handle.index);
      else if (shift) extend(pressed.current ?? handle.index, handle.index);
      else actions.chooseSupports(null);
      pressed.current = handle.index;
    },
    letGo() {
      actions.settleGesture();
      release();
    },
    putBack() {
      actions.bailGesture();
      release();
    },
  });

  const onKeyDown = (event: KeyboardEvent, handle: SectionHandle) => {
    if (handle.kind === 'support' && span && (event.key === 'Escape' || event.key === 'Delete')) {
      event.preventDefault();
      event.stopPropagation();
      const why =
        event.key === 'Delete'
          ? actions.attempt(`${spanWords(span)} taken out`, (scene) => removeSupports(scene, file.id, span))
          : null;
      setRefusal(why);
      if (why === null) actions.chooseSupports(null);
      return;
    }
    const [along, up] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key] ?? [
      0, 0,
    ];
    if ((along === 0 && up === 0) || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    if (handle.kind === 'support' && along !== 0) {
      const next = Math.min(Math.max(0, handle.index + along), (comb?.teeth.length ?? 1) - 1);
      setSupport(next);
      if (event.shiftKey) extend(handle.index, next);
      else actions.chooseSupports(null);
      pressed.current = next;
      drawing.current?.querySelector<SVGElement>(`[data-handle="support-${next}"]`)?.focus();
      return;
    }
    if (handle.kind === 'curve' && along === 0) return;
    const by = steps[handle.kind] * (event.shiftKey ? 10 : 1);
    setRefusal(put(file, handle, { alongMm: along * by, upMm: up * by, snaps: false }, spanOf(handle)));
  };

  const placed = handles.flatMap((handle) => {
    const [x] = ground.xsOf(handle.atMm / 1000);
    if (x === undefined) return [];
    const tooth = handle.kind === 'support' ? comb?.teeth.find(({ key }) => key === `${handle.index}.0`) : undefined;
    if (handle.kind === 'support' && !tooth) return [];
    const y =
      handle.kind === 'support' && tooth
        ? tooth.departure > 0
          ? tooth.top
          : tooth.top + tooth.height
        : profile.yOf((handle as { readonly heightMm: number }).heightMm / 1000);
    return [{ handle, key: handleKey(handle), x, y: Math.min(height - 2, Math.max(2, y)) }];
  });
  const inSpan = placed.flatMap(({ handle, x }) => (spanOf(handle) ? [x] : []));
  const chosenFrame = comb &&
    inSpan.length > 0 && {
      x: Math.min(...inSpan) - 6,
      y: Math.max(0, comb.baseline - 12),
      width: Math.max(...inSpan) - Math.min(...inSpan) + 12,
      height: Math.min(24, height - Math.max(0, comb.baseline - 12)),
    };
  const active = placed.find(({ key }) => key === (heldKey ?? focused));
  return (
    <svg ref={drawing} className="gwb-draw gwb-handles" width={axis.width} height={height}>
      <title>What can be dragged in the section</title>
      {chosenFrame && <rect className="gwb-chosen-span" {...chosenFrame} />}
      {placed.map(({ handle, key, x, y }) => (
        <g
          key={key}
          data-handle={key}
          className={`gwb-handle gwb-handle-${handle.kind}${spanOf(handle) ? ' gwb-chosen' : ''}`}
          transform={`translate(${x.toFixed(2)} ${y.toFixed(2)})`}
          role="slider"
          // Supports are many: one of them is a stop of the Tab key, the arrow keys go from one to the next.
          tabIndex={handle.kind === 'support' && handle.index !== support ? -1 : 0}
          aria-label={spanOf(handle) ? `${handleName(handle)}, chosen` : handleName(handle)}
          aria-orientation={handle.kind === 'curve' ? 'horizontal' : 'vertical'}
          aria-valuenow={Math.round(figureOf(handle) * 10) / 10}
          aria-valuetext={handleFigures(file, handle, show).join(', ')}
          onFocus={() => {
            setFocused(key);
            setRefusal(null);
            if (handle.kind !== 'support') actions.choosePoint(handle.index);
            if (handle.kind === 'support') setSupport(handle.index);
          }}
          onBlur={() => setFocused(null)}
          onKeyDown={(event) => onKeyDown(event, handle)}
        >
          <rect className="gwb-catch" {...catchOf(handle)} />
          {handle.kind === 'point' && <path d="M0 -5L5 0L0 5L-5 0Z" />}
          {handle.kind === 'curve' && <path d="M0 -5.5V5.5M-2.5 -5.5H2.5M-2.5 5.5H2.5" />}
          {handle.kind === 'support' && <path d="M-3.5 0H3.5" />}
        </g>
      ))}
      {active && (
        <HandText
          x={active.x}
          y={active.y}
          width={axis.width}
          words={[
            ...handleFigures(file, active.handle, show).filter(Boolean),
            ...(span && spanOf(active.handle) ? [`${span.to - span.from + 1} together`] : []),
          ].join(' · ')}
          refusal={refusal}
        />
      )}
    </svg>
  );
}

const figureOf = (handle: SectionHandle): number =>
  handle.kind === 'point' ? handle.heightMm : handle.kind === 'curve' ? handle.lengthMm : handle.offMm;

/** Where a press takes hold: room for a finger, but not over the neighbour. */
const catchOf = ({ kind }: SectionHandle) =>
  kind === 'support'
    ? { x: -5, y: -9, width: 10, height: 18 }
    : kind === 'curve'
      ? { x: -8, y: -16, width: 16, height: 32 }
      : { x: -14, y: -14, width: 28, height: 28 };

interface HandTextProps {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly words: string;
  readonly refusal: string | null;
}

/** The numbers at the hand, above it or, near the top, under it, and why it cannot go further. */
function HandText({ x, y, width, words, refusal }: HandTextProps) {
  const anchor = x < width * 0.3 ? 'start' : x > width * 0.7 ? 'end' : 'middle';
  const below = y < 30;
  const at = anchor === 'start' ? x + 9 : anchor === 'end' ? x - 9 : x;
  return (
    <g className="gwb-hand-words" textAnchor={anchor}>
      <text x={at} y={below ? y + 22 : y - 12}>
        {words}
      </text>
      {refusal !== null && (
        <text x={at} y={below ? y + 36 : y - 26} className="gwb-refusal">
          {refusal}
        </text>
      )}
    </g>
  );
}
