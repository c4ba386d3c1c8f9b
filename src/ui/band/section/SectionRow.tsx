import { useMemo, useState } from 'react';
import { legAt } from '../../../core/findings/index.ts';
import { type GradeAtPlace, plannedHeight, steepest, trackPoint } from '../../../core/track/index.ts';
import type { Track } from '../../../core/track/types.ts';
import { timeAtPlace } from '../../../state/index.ts';
import { valueAt } from '../frame/axis.ts';
import type { BandFrame, SectionEdit } from '../frame/bandFrame.ts';
import { LiveText } from '../frame/LiveText.tsx';
import { GoButton } from '../GoButton.tsx';
import { PassLines } from '../handles/PassLines.tsx';
import { SectionHandles } from '../handles/SectionHandles.tsx';
import { Row } from '../rows/Row.tsx';
import {
  chainageFigure,
  differenceFigure,
  gradeOneForm,
  lengthFigure,
  lengthUnit,
  type Show,
  withUnit,
} from '../words.ts';
import { combOf, profileOf } from './profileDrawing.ts';
import { SectionTable } from './SectionTable.tsx';
import { SurveyMarks } from './SurveyMarks.tsx';
import { letterSection } from './sectionLettering.ts';
import { surveyMarks } from './surveyMarks.ts';
import './section.css';

/** Grid on which the steepest place is looked for, m: a twentieth of a short wagon. */
const STEEPEST_GRID = 0.005;

/** The steepest grade and its chainage; of a track that is level everywhere, that it is. */
function steepestWords({ grade, chainage }: GradeAtPlace, show: Show, short: boolean): string {
  const words = gradeOneForm(grade, show);
  if (words === 'level') return 'level throughout';
  return `${short ? '' : 'steepest '}${words} · ${chainageFigure(chainage, show)}`;
}

interface SectionRowProps {
  readonly frame: BandFrame;
  /** Null where it is to be read only. */
  readonly edit: SectionEdit | null;
  readonly height: number;
}

/** The long section: profile, supports, grades and heights written on it, departures from plan below. */
export function SectionRow({ frame, edit, height }: SectionRowProps) {
  const { view, ghost, beside, surveyed, ground, show, axis, live, fonts, bad } = frame;
  const { motion } = view;
  const track = edit?.track ?? view.track;
  const [old, setOld] = useState<Track | null>(null);
  const profile = useMemo(
    () =>
      ground
        ? profileOf(
            track,
            ground,
            height,
            old ?? ghost?.track ?? null,
            old ?? track,
            surveyed,
            beside?.view.track ?? null,
          )
        : null,
    [track, ground, height, ghost, old, surveyed, beside],
  );
  const comb = useMemo(
    () => (ground ? combOf(track, ground, height, surveyed) : null),
    [track, ground, height, surveyed],
  );
  const marks = useMemo(
    () => (ground && comb && surveyed ? surveyMarks(surveyed, ground, comb) : []),
    [ground, comb, surveyed],
  );
  const nexts = ground && surveyed?.next ? ground.xsOf(surveyed.next) : [];
  const ghostComb = useMemo(() => {
    const other = old ?? ghost?.track;
    return ground && comb && other ? combOf(other, ground, height, surveyed, comb) : null;
  }, [ghost, old, ground, height, surveyed, comb]);
  const worst = useMemo(() => steepest((s) => trackPoint(track, s).grade, track.length, STEEPEST_GRID), [track]);
  const lettering = useMemo(
    () =>
      ground && profile
        ? letterSection({
            track,
            ground,
            profile,
            show,
            fonts,
            bad,
            reversed: view.trial.path.reversed,
            ...(edit ? { passes: edit.passes } : {}),
            ...(view.trial.legs && !edit ? { legs: view.trial.legs } : {}),
          })
        : null,
    [track, ground, profile, show, fonts, bad, view, edit],
  );
  const isBad = (chainage: number) => bad.some((support) => Math.abs(support.chainage - chainage) < 1e-6);
  const nearBad = (place: number) => {
    const { supports } = track.spec.profile.strip ?? { supports: [] };
    let nearest = Number.NaN;
    for (const { chainage } of supports)
      if (!(Math.abs(chainage - place) >= Math.abs(nearest - place))) nearest = chainage;
    return isBad(nearest);
  };
  const goTo = (place: number) => {
    if (motion && frame.reference)
      frame.actions.seek(timeAtPlace(motion.time, frame.reference, place, live.moment?.time ?? 0));
  };
  const placeAt = (x: number) =>
    ground ? ground.places[Math.max(0, Math.min(ground.places.length - 1, Math.round(x)))] : valueAt(axis, x);

  return (
    <Row
      frame={frame}
      id="section"
      name="Section"
      unit={lengthUnit(show)}
      height={height}
      className="gwb-section"
      holds={edit !== null}
      value={(moment) =>
        lengthFigure(Number.isNaN(moment.place) ? Number.NaN : trackPoint(track, moment.place).z, show)
      }
      beside={
        beside
          ? ({ place }) =>
              place >= 0 && place <= beside.view.track.length
                ? differenceFigure(trackPoint(beside.view.track, place).z - trackPoint(track, place).z, 'length', show)
                : '–'
          : null
      }
      enter={() => goTo(worst.chainage)}
      hover={(x) => {
        const at = placeAt(x);
        const point = trackPoint(track, at);
        const way =
          Math.abs(point.grade) < 1e-5
            ? ''
            : ` ${(point.grade > 0) !== view.trial.path.reversed ? 'climbing' : 'falling'}`;
        const leg = edit ? null : legAt(view.trial.legs ?? [], at);
        const on = leg === null ? '' : ` · ${leg.trackName}`;
        return `${withUnit(lengthFigure(point.z, show), lengthUnit(show))} · ${gradeOneForm(point.grade, show)}${way}${on}`;
      }}
      gutter={
        <>
          <div className="gwb-sub">rail above the datum</div>
          {comb ? (
            <div className="gwb-line gwb-comb-line">
              <span className="gwb-sub">departure from plan</span>
              <span className="gwb-unit">{lengthUnit(show)}</span>
              <LiveText
                live={live}
                className="gwb-value"
                read={({ place }) =>
                  lengthFigure(
                    Number.isNaN(place) ? Number.NaN : trackPoint(track, place).z - plannedHeight(track, place),
                    show,
                    true,
                  )
                }
                marked={({ place }) => nearBad(place)}
              />
            </div>
          ) : null}
        </>
      }
      right={
        <>
          <GoButton go={() => goTo(worst.chainage)} label="Steepest place">
            {steepestWords(worst, show, frame.layout.narrow)}
          </GoButton>
          {comb && comb.perMillimetre < 6 ? (
            <div className="gwb-foot">{comb.perMillimetre.toFixed(1)} px a mm</div>
          ) : null}
        </>
      }
      table={<SectionTable track={track} show={show} />}
    >
      <svg className="gwb-draw" width={axis.width} height={height} aria-hidden="true">
        {profile ? (
          <>
            <path d={profile.fill} className="gwb-fill" />
            {comb?.teeth.map((tooth) => (
              <line
                key={tooth.key}
                x1={tooth.x}
                x2={tooth.x}
                y1={profile.yAtX(tooth.x)}
                y2={profile.datum}
                className={isBad(tooth.chainage) ? 'gwb-ordinate gwb-bad' : 'gwb-ordinate'}
              />
            ))}
            <line x1={0} x2={axis.width} y1={profile.datum} y2={profile.datum} className="gwb-datum" />
            {profile.beside ? <path d={profile.beside} className="gwb-beside" /> : null}
            {profile.ghost ? <path d={profile.ghost} className="gwb-ghost" /> : null}
            <path d={profile.line} className="gwb-profile" />
          </>
        ) : null}
        {comb ? (
          <>
            <line x1={0} x2={axis.width} y1={comb.baseline} y2={comb.baseline} className="gwb-comb-base" />
            {comb.teeth.map((tooth) => (
              <rect
                key={tooth.key}
                x={tooth.x - (isBad(tooth.chainage) ? 3.5 : 1.5)}
                width={isBad(tooth.chainage) ? 7 : 3}
                y={tooth.top}
                height={tooth.height}
                className={isBad(tooth.chainage) ? 'gwb-tooth gwb-bad' : 'gwb-tooth'}
              />
            ))}
            {ghostComb?.teeth
              .filter(
                (tooth) =>
                  !comb.teeth.some(
                    (old) => Math.abs(old.x - tooth.x) < 0.5 && Math.abs(old.departure - tooth.departure) < 5e-5,
                  ),
              )
              .map((tooth) => (
                <rect
                  key={tooth.key}
                  x={tooth.x - 5}
                  width={10}
                  y={tooth.top - 0.5}
                  height={tooth.height + 1}
                  className="gwb-ghost"
                />
              ))}
            <SurveyMarks marks={marks} />
          </>
        ) : null}
        {profile
          ? nexts.map((x) => (
              <g key={x}>
                <line x1={x} x2={x} y1={profile.yAtX(x)} y2={height} className="gwb-next-line" />
                <path d={`M${x},${profile.yAtX(x) - 1}l-5,-9h10z`} className="gwb-next-head" />
              </g>
            ))
          : null}
        {lettering?.leaders.map((leader) => (
          <line
            key={leader.key}
            x1={leader.x}
            x2={leader.x}
            y1={leader.top}
            y2={leader.bottom}
            className={leader.marked ? 'gwb-leader gwb-bad' : 'gwb-leader'}
          />
        ))}
        {lettering?.texts.map((text) => (
          <text
            key={text.key}
            x={text.x}
            y={text.y}
            textAnchor={text.anchor}
            className={`gwb-letters ${text.className}`}
            transform={
              text.turn === 0 ? undefined : `rotate(${text.turn.toFixed(2)} ${text.x.toFixed(1)} ${text.y.toFixed(1)})`
            }
          >
            {text.text}
          </text>
        ))}
        {edit && ground && profile ? (
          <PassLines passes={edit.passes} ground={ground} profile={profile} show={show} />
        ) : null}
      </svg>
      {edit && ground && profile ? (
        <SectionHandles
          frame={frame}
          edit={edit}
          ground={ground}
          profile={profile}
          comb={comb}
          height={height}
          onOld={setOld}
        />
      ) : null}
    </Row>
  );
}
