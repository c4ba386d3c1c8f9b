import { AdaptiveDpr } from '@react-three/drei/core/AdaptiveDpr';
import { Canvas } from '@react-three/fiber';
import { useCallback, useEffect, useRef, useState } from 'react';
import { type StoreApi, useStore } from 'zustand';
import type { Route } from '../state/route/index.ts';
import type { PlaybackState, SessionState } from '../state/types.ts';
import { listen } from './camera/hand.ts';
import { CameraBar } from './controls/CameraBar.tsx';
import { LensBar } from './controls/LensBar.tsx';
import { HandleLayer } from './handles/handleLayer.ts';
import { FindingLabel } from './label/FindingLabel.tsx';
import { useStageWords } from './label/stageWords.ts';
import { passOnRemarks } from './remarks.ts';
import { BesideLine } from './view/BesideLine.tsx';
import { Director } from './view/director.ts';
import { drawingOptions } from './view/drawingOptions.ts';
import { Frames } from './view/Frames.tsx';
import { Lettering } from './view/lettering.ts';
import { jointOf, namedFinding, nearFinding } from './view/subjects.ts';
import './stage.css';
import './label/label.css';
import './controls/controls.css';
import './lens/lens.css';
import './handles/handles.css';
import './view/beside.css';

export interface StageProps {
  readonly session: StoreApi<SessionState>;
  readonly playback: StoreApi<PlaybackState>;
  /** What the plan is changed through; left out, it cannot be changed here. */
  readonly route?: Route;
  /** The person has chosen a finding by its label: its index in the result. */
  readonly onChooseFinding?: (index: number) => void;
}

interface Crew {
  readonly director: Director;
  readonly lettering: Lettering;
  readonly handles: HandleLayer | null;
}

passOnRemarks();

/** A press this near to a joint chooses it, px. */
const joinReach = 14;

const reducedMotion = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/** The railway in the room: fills its parent. */
export function Stage({ session, playback, route, onChooseFinding }: StageProps) {
  const root = useRef<HTMLDivElement>(null);
  const plate = useRef<SVGSVGElement>(null);
  const titleBox = useRef<HTMLDivElement>(null);
  const title = useRef<HTMLHeadingElement>(null);
  const subtitle = useRef<HTMLParagraphElement>(null);
  const bar = useRef<HTMLSpanElement>(null);
  const controls = useRef<HTMLDivElement>(null);
  const named = useRef<HTMLDivElement>(null);
  const near = useRef<HTMLDivElement>(null);
  const handleBox = useRef<HTMLFieldSetElement>(null);
  const redraw = useRef<() => void>(() => {});
  const turned = useRef<() => void>(() => {});
  const [crew, setCrew] = useState<Crew | null>(null);
  const [options] = useState(drawingOptions);
  const [lost, setLost] = useState(false);

  useEffect(() => {
    if (!plate.current || !title.current || !subtitle.current || !titleBox.current || !bar.current) return;
    if (!named.current || !near.current || !controls.current) return;
    const director = new Director(session, playback, () => redraw.current(), reducedMotion);
    const lettering = new Lettering(
      {
        plate: plate.current,
        title: title.current,
        subtitle: subtitle.current,
        titleBox: titleBox.current,
        bar: bar.current,
        controls: controls.current,
        named: named.current,
        near: near.current,
      },
      director,
    );
    const handles =
      handleBox.current === null || route === undefined
        ? null
        : new HandleLayer(
            handleBox.current,
            session,
            route,
            (pixel, height) => director.world.toPlan(pixel, height, ...director.sights.size),
            [titleBox.current],
            () => redraw.current(),
          );
    setCrew({ director, lettering, handles });
    const untell = playback.subscribe(({ time }) => lettering.tellTime(session.getState(), time));
    return () => {
      setCrew(null);
      untell();
      handles?.dispose();
      lettering.dispose();
      director.dispose();
    };
  }, [session, playback, route]);

  useEffect(() => {
    const element = root.current?.querySelector<HTMLElement>('.stage-picture');
    if (!element || crew === null) return;
    return listen(element, () => crew.director.rig, {
      moved: () => turned.current(),
      clicked: (x, y) => {
        const joint = crew.director.jointAt({ x, y }, joinReach);
        if (joint !== null) session.setState({ chosenJoint: joint });
      },
    });
  }, [crew, session]);

  const lensOpen = useStore(session, (state) => state.lens.open);
  const namedIndex = useStore(session, namedFinding);
  const nearIndex = useStore(session, nearFinding);
  const ofJoint = useStore(
    session,
    (state) => namedIndex !== null && jointOf(state.result?.findings[namedIndex]) !== null,
  );
  const words = useStageWords(session);

  const magnify = useCallback(() => {
    const state = session.getState();
    const index = namedFinding(state);
    if (index === null || crew === null) return;
    const joint = crew.director.jointOfFinding(index);
    const finding = state.result?.findings[index];
    if (joint === null || finding === undefined) return;
    if (onChooseFinding) onChooseFinding(index);
    else {
      playback.setState({ playing: false, time: finding.time });
      session.setState({ chosenFinding: index, chosenJoint: joint });
    }
    session.setState(({ lens }) => ({ lens: { ...lens, open: true } }));
  }, [session, playback, crew, onChooseFinding]);

  const choose = useCallback(
    (index: number | null) => {
      if (index === null) return;
      if (onChooseFinding) onChooseFinding(index);
      else session.setState({ chosenFinding: index });
    },
    [session, onChooseFinding],
  );

  return (
    <div className="stage" ref={root}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned with the arrow keys */}
      <div className="stage-picture" role="img" aria-label={words} tabIndex={0}>
        <Canvas
          frameloop="demand"
          dpr={options.dpr}
          performance={options.performance}
          gl={options.gl}
          flat
          linear
          onCreated={({ gl }) => {
            gl.domElement.addEventListener('webglcontextlost', () => setLost(true));
            gl.domElement.addEventListener('webglcontextrestored', () => setLost(false));
          }}
        >
          {crew !== null && <Frames {...crew} redraw={redraw} turned={turned} />}
          <AdaptiveDpr />
        </Canvas>
      </div>
      <svg className="stage-plate" ref={plate} aria-hidden="true" />
      <div className="stage-title" ref={titleBox}>
        <h2 ref={title}>Stage</h2>
        <p ref={subtitle} />
      </div>
      <FindingLabel
        box={named}
        session={session}
        index={namedIndex}
        onChoose={() => choose(namedIndex)}
        onMagnify={ofJoint ? magnify : null}
      />
      <FindingLabel
        box={near}
        session={session}
        index={nearIndex}
        onChoose={() => choose(nearIndex)}
        onMagnify={null}
      />
      <BesideLine session={session} />
      <fieldset className="stage-handles" ref={handleBox} aria-label="Handles of the plan" hidden />
      <span className="stage-bar" ref={bar} />
      <div className="stage-foot" ref={controls}>
        {lensOpen ? <LensBar session={session} playback={playback} /> : <CameraBar session={session} />}
      </div>
      {lost && (
        <p className="stage-lost">The picture was lost by the graphics card. It comes back when the card does.</p>
      )}
    </div>
  );
}
