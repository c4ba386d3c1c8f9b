import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { jointNumber } from '../../../core/findings/index.ts';
import type { BandFrame } from '../frame/bandFrame.ts';
import { CARPET_MARGIN, type CarpetLayout, FINGER } from '../frame/layout.ts';
import { type Moment, useLive } from '../frame/live.ts';
import { textWidth } from '../textWidth.ts';
import { forceFigure } from '../words.ts';
import { fitNames } from './fitNames.ts';
import { jointName, plainPair } from './jointName.ts';

interface Props {
  readonly frame: BandFrame;
  readonly carpet: CarpetLayout;
  readonly scroll: number;
  readonly setScroll: (scroll: number) => void;
  readonly forceNow: (joint: number, moment: Moment) => number;
}

/** What the gutter has beside a joint's name: its paddings, and the force with the space before it, px. */
const BESIDE_NAME = 30 + 8 + 34;

/** A line of joint lettering needs this much, px. */
const LINE = 11;

/** Which joints have room for their name, `line` px high: the chosen one always, then every so many that do not run into it. */
export function namedJoints(joints: number, pitch: number, chosen: number | null, line = LINE): number[] {
  const every = Math.ceil(line / pitch);
  const clear = (joint: number) => chosen === null || joint === chosen || Math.abs(joint - chosen) >= every;
  return Array.from({ length: joints }, (_, joint) => joint).filter(
    (joint) => joint === chosen || (joint % every === 0 && clear(joint)),
  );
}

/** Names of the joints and the forces in their beads; a click chooses. */
export function CarpetGutter({ frame, carpet, scroll, setScroll, forceNow }: Props) {
  const { view, live, chosenJoint, actions, layout, fonts } = frame;
  const { naming } = view;
  const { train } = view.trial;
  const window = useRef<HTMLDivElement>(null);
  const values = useRef(new Map<number, HTMLSpanElement>());
  const most = carpet.full - carpet.height;
  const names = (joint: number): readonly [string, string] => {
    const whole = plainPair(naming, joint);
    // The chosen one is written heavier.
    const font = `${joint === chosenJoint ? '600 ' : ''}11px ${layout.narrow ? fonts.letter : fonts.ui}`;
    const number = textWidth(`${jointNumber(naming, joint)} `, font);
    return fitNames(whole, layout.gutter - BESIDE_NAME - number, font, textWidth) ?? whole;
  };
  // The joints between are under a finger in the carpet beside.
  const line = layout.coarse ? FINGER : LINE;
  const named = namedJoints(train.vehicles.length - 1, carpet.pitch, chosenJoint, line);
  // They are many: one of them is a stop of the Tab key, the arrow keys go from one to the next.
  const [stop, setStop] = useState(0);
  const last = train.vehicles.length - 2;
  const tabStop = chosenJoint ?? (named.includes(stop) ? stop : named[0]);
  /** The joint that the keyboard or a finger is at: its whole name is written out, as a mouse has it by waiting. */
  const [told, setTold] = useState<number | null>(null);
  const goTo = useRef<number | null>(null);
  const onKeyDown = (event: KeyboardEvent, joint: number) => {
    const by = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    const to = by === undefined ? { Home: 0, End: last }[event.key] : joint + by;
    if (to === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    const next = Math.max(0, Math.min(last, to));
    // It may have no room for its name until it is chosen.
    goTo.current = next;
    actions.chooseJoint(next);
    setStop(next);
  };
  useEffect(() => {
    if (goTo.current === null) return;
    window.current?.querySelector<HTMLElement>(`[data-joint="${goTo.current}"]`)?.focus({ preventScroll: true });
    goTo.current = null;
  });

  useLive(live, (moment) => {
    for (const [joint, span] of values.current) {
      const force = forceNow(joint, moment);
      const text = Number.isNaN(force) ? '–' : forceFigure(force, view.greatestForce);
      if (span.textContent !== text) span.textContent = text;
    }
  });

  useEffect(() => {
    const element = window.current;
    if (!element || most <= 0) return;
    const turn = (event: WheelEvent) => {
      event.preventDefault();
      event.stopPropagation();
      setScroll(Math.max(0, Math.min(most, scroll + event.deltaY)));
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  }, [most, scroll, setScroll]);

  const topOf = (joint: number): number =>
    Math.max(0, CARPET_MARGIN + joint * carpet.pitch + (carpet.pitch - 1) / 2 - line / 2) - scroll;

  return (
    <>
      <div ref={window} className="gwb-joints" style={{ height: carpet.height }}>
        {named.map((joint) => (
          <button
            key={joint}
            type="button"
            tabIndex={joint === tabStop ? 0 : -1}
            data-joint={joint}
            aria-pressed={joint === chosenJoint}
            title={jointName(naming, joint)}
            onFocus={() => {
              setStop(joint);
              setTold(joint);
            }}
            onBlur={() => setTold(null)}
            onKeyDown={(event) => onKeyDown(event, joint)}
            className={joint === chosenJoint ? 'gwb-joint gwb-chosen' : 'gwb-joint'}
            style={{
              top: topOf(joint),
              height: line,
              lineHeight: `${line}px`,
            }}
            onClick={() => actions.chooseJoint(joint === chosenJoint ? null : joint)}
          >
            <span className="gwb-joint-name">
              {jointNumber(naming, joint)} <span className="gwb-joint-part">{names(joint)[0]}</span>–
              <span className="gwb-joint-part">{names(joint)[1]}</span>
            </span>
            <span
              className="gwb-joint-force"
              ref={(span) => {
                if (span) values.current.set(joint, span);
                return () => {
                  values.current.delete(joint);
                };
              }}
            />
          </button>
        ))}
        {most > 0 ? (
          <div
            className="gwb-scroll"
            style={{
              top: (scroll / carpet.full) * carpet.height,
              height: (carpet.height / carpet.full) * carpet.height,
            }}
          />
        ) : null}
      </div>
      {told !== null && (
        <span className="gwb-joint-whole" style={{ top: topOf(told) }} aria-hidden="true">
          {jointName(naming, told)}
        </span>
      )}
    </>
  );
}
