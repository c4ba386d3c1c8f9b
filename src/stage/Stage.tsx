import { AdaptiveDpr } from '@react-three/drei/core/AdaptiveDpr';
import { Canvas } from '@react-three/fiber';
import { useCallback, useEffect, useRef, useState } from 'react';
import { type StoreApi, useStore } from 'zustand';
import type { Pictures } from '../state/picture/index.ts';
import type { Route } from '../state/route/index.ts';
import type { Sight } from '../state/show/index.ts';
import type { PlaybackState, SessionState } from '../state/types.ts';
import { type Listening, listen } from './camera/hand.ts';
import { CameraBar } from './controls/CameraBar.tsx';
import { LensBar } from './controls/LensBar.tsx';
import { RoomBar } from './controls/RoomBar.tsx';
import { Fingers } from './handles/fingers.ts';
import { HandleLayer } from './handles/handleLayer.ts';
import { planIsOpen } from './handles/planIsOpen.ts';
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
  /** What draws, as it names itself: without a card some things are left out. */
  readonly renderer: string;
  /** Filled with what gives the view on show; left out, it cannot be kept. */
  readonly sight?: Sight;
  /** What the plan is changed through; left out, it cannot be changed here. */
  readonly route?: Route;
  /** Told how a picture of the stage is drawn, for those who keep pictures. */
  readonly drawnBy?: Pictures['drawnBy'];
  /** The person has chosen a finding by its label: its index in the result. */
  readonly onChooseFinding?: (index: number) => void;
}

interface Crew {
  readonly director: Director;
  readonly lettering: Lettering;
  readonly handles: HandleLayer | null;
  readonly fingers: Fingers;
}

passOnRemarks();

/** A press this near to a joint or a support chooses it, px; a finger is broader than an arrow. */
const joinReach = 14;
const postReach = { mouse: 12, touch: 22 } as const;

const reducedMotion = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/** The railway in the room: fills its parent. */
export function Stage({ session, playback, renderer, sight, route, drawnBy, onChooseFinding }: StageProps) {
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
  const hand = useRef<Listening | null>(null);
  const [crew, setCrew] = useState<Crew | null>(null);
  const [options] = useState(() => drawingOptions(renderer));
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
    const fingers = new Fingers({
      busy: () => hand.current?.busy() ?? false,
      join: (event) => hand.current?.join(event),
    });
    const handles =
      handleBox.current === null || route === undefined
        ? null
        : new HandleLayer(
            handleBox.current,
            session,
            route,
            (pixel, height) => director.world.toPlan(pixel, height, ...director.sights.size),
            [titleBox.current, controls.current],
            fingers,
            () => redraw.current(),
          );
    const bars = controls.current;
    const watch = new ResizeObserver(() => {
      const under = bars.parentElement?.getBoundingClientRect().bottom;
      if (under !== undefined) director.takeBars(under - bars.getBoundingClientRect().top);
    });
    watch.observe(bars);
    setCrew({ director, lettering, handles, fingers });
    if (sight) sight.take = () => director.view();
    const unroom = route?.route.subscribe(({ works }, before) => {
      if (works !== before.works) director.showRoom(works === 'room');
    });
    const untell = playback.subscribe(({ time }) => lettering.tellTime(session.getState(), time));
    return () => {
      setCrew(null);
      watch.disconnect();
      if (sight) sight.take = null;
      untell();
      unroom?.();
      handles?.dispose();
      lettering.dispose();
      director.dispose();
    };
  }, [session, playback, route, sight]);

  useEffect(() => {
    const element = root.current?.querySelector<HTMLElement>('.stage-picture');
    if (!element || crew === null) return;
    const { director, fingers } = crew;
    const worksAtLine = (): boolean => planIsOpen(session.getState()) && route?.route.getState().works === 'line';
    const listening = listen(element, () => director.rig, {
      moved: () => turned.current(),
      clicked: (x, y, { shiftKey, pointerType }) => {
        const joint = director.jointAt({ x, y }, joinReach);
        if (joint !== null) session.setState({ chosenJoint: joint });
        if (joint !== null || route === undefined || !worksAtLine()) return;
        const post = director.supportAt({ x, y }, postReach[pointerType === 'touch' ? 'touch' : 'mouse']);
        if (post === null) return;
        if (post.trackId !== route.plan()?.trackId) route.actions.chooseTrack(post.trackId);
        route.actions.chooseSupport(post.index, shiftKey);
      },
      takesOver: (event) => fingers.takesOver(event),
      // Before an audience the arrows lead from stop to stop.
      leavesKeys: () => session.getState().tour.presenting,
    });
    hand.current = listening;
    // A support that the mouse is over offers itself: its handle is then under the hand.
    const point = (event: PointerEvent): void => {
      if (event.pointerType !== 'mouse' || event.buttons !== 0 || route === undefined || !worksAtLine()) return;
      const { left, top } = element.getBoundingClientRect();
      const post = director.supportAt({ x: event.clientX - left, y: event.clientY - top }, postReach.mouse);
      const index = post !== null && post.trackId === route.plan()?.trackId ? post.index : null;
      if (index !== route.route.getState().atSupport) route.actions.offerSupport(index);
    };
    element.addEventListener('pointermove', point);
    return () => {
      element.removeEventListener('pointermove', point);
      hand.current = null;
      listening.stop();
    };
  }, [crew, session, route]);

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
          {crew !== null && (
            <Frames
              director={crew.director}
              lettering={crew.lettering}
              handles={crew.handles}
              redraw={redraw}
              turned={turned}
              drawnBy={drawnBy}
            />
          )}
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
        {route !== undefined && !lensOpen && <RoomBar session={session} route={route} />}
        {lensOpen ? <LensBar session={session} playback={playback} /> : <CameraBar session={session} route={route} />}
      </div>
      {lost && (
        <p className="stage-lost">The picture was lost by the graphics card. It comes back when the card does.</p>
      )}
    </div>
  );
}
