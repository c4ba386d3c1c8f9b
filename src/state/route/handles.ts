import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import { cornerPlace, elementStartsMm, type Scene, type SceneTrack } from '../../scene/index.ts';

export type HandleKind =
  | 'start'
  | 'heading'
  | 'end'
  | 'radius'
  | 'corner'
  | 'extend'
  | 'support'
  | 'room-corner'
  | 'room-middle'
  | 'room-side'
  | 'room-leaf'
  | 'room-split'
  | 'draw';

/** A place in plan, m. */
export type Place = readonly [x: number, y: number];

/** Something of a track's plan or of the room that a hand can take hold of. */
export interface Handle {
  /** The same for the same handle before and after an edit. */
  readonly key: string;
  readonly kind: HandleKind;
  /** Element it belongs to, from 0; the last one where it belongs to the end of the track. */
  readonly element: number;
  /** Where it is, m. */
  readonly place: readonly [x: number, y: number, z: number];
  /** What is taken along: the end of the track for new track, else the handle itself. */
  readonly anchor: readonly [x: number, y: number];
  /** For a handle that moves along a line: the way in plan in which what it sets grows. Null for one that goes anywhere. */
  readonly grows: readonly [x: number, y: number] | null;
  /** For one that goes round something: the place it turns about, and which way sets more (to the left 1). */
  readonly turns?: { readonly about: Place; readonly sense: 1 | -1 };
  /** What it sets, in words. */
  readonly name: string;
  /** What the arrow keys do there, in words; undefined where they move it. */
  readonly keys?: string;
}

/** How far behind the start the handle for the heading stands, and how far beyond the end the one for new track, in gauges. */
const armInGauges = 14;

const kindName = { straight: 'straight', arc: 'curve', helix: 'helix', transition: 'easement' } as const;

/** The handles of a track, from its start to its end: the order in which the keyboard goes through them. */
export function handlesOf(scene: Scene, trackId: string, track: Track): readonly Handle[] {
  const file = scene.tracks.find(({ id }) => id === trackId);
  if (file === undefined) return [];
  const arm = (armInGauges * scene.scale.gaugeMm) / 1000;
  const starts = elementStartsMm(file).map((mm) => Math.min(mm / 1000, track.length));
  const handles: Handle[] = [];
  handles.push(...('branchOf' in file.start ? turnoutHandles(track, starts[0]) : startHandles(track, arm)));
  file.alignment.forEach((element, index) => {
    const named = element.id ?? `${kindName[element.kind]} ${index + 1}`;
    const curved = element.kind === 'arc' || element.kind === 'helix';
    if (curved) handles.push(radiusHandle(scene, track, file, index, (starts[index] + starts[index + 1]) / 2, named));
    const corner = element.kind === 'arc' ? cornerPlace(scene, file, index) : null;
    if (corner !== null) {
      const { z } = at(track, (starts[index] + starts[index + 1]) / 2);
      const place = [corner.xMm / 1000, corner.yMm / 1000, z] as const;
      handles.push({
        key: `corner:${index}`,
        kind: 'corner',
        element: index,
        place,
        anchor: [place[0], place[1]],
        grows: null,
        name: `Corner of ${named}`,
      });
    }
    handles.push(endHandle(scene, track, file, index, starts[index + 1], named));
  });
  return [...handles, extendHandle(track, file, arm)];
}

const at = (track: Track, chainage: number) => trackPoint(track, chainage);

function startHandles(track: Track, arm: number): Handle[] {
  const { x, y, z, heading } = at(track, 0);
  const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
  return [
    {
      key: 'heading',
      kind: 'heading',
      element: 0,
      place: [x - arm * cos, y - arm * sin, z],
      anchor: [x - arm * cos, y - arm * sin],
      // Behind the start a turn to the left swings to the right.
      grows: [sin, -cos],
      name: 'Heading of the track',
    },
    {
      key: 'start',
      kind: 'start',
      element: 0,
      place: [x, y, z],
      anchor: [x, y],
      grows: null,
      name: 'Start of the track',
    },
  ];
}

/** A branch is moved along its main track by its front joint, and led to the other side or the other way by its heel. */
function turnoutHandles(track: Track, heelAt: number): Handle[] {
  const [front, heel] = [at(track, 0), at(track, heelAt)];
  return [
    {
      key: 'heading',
      kind: 'heading',
      element: 0,
      place: [heel.x, heel.y, heel.z],
      anchor: [heel.x, heel.y],
      grows: null,
      name: 'Way the turnout leads',
    },
    {
      key: 'start',
      kind: 'start',
      element: 0,
      place: [front.x, front.y, front.z],
      anchor: [front.x, front.y],
      grows: [Math.cos(front.heading), Math.sin(front.heading)],
      name: 'Turnout along its main track',
    },
  ];
}

function radiusHandle(
  scene: Scene,
  track: Track,
  file: SceneTrack,
  index: number,
  chainage: number,
  named: string,
): Handle {
  const { x, y, z, heading } = at(track, chainage);
  const element = file.alignment[index];
  const hand = 'turn' in element && element.turn === 'left' ? 1 : -1;
  // A bend between straights draws back from its corner, inwards, the wider it is; a curve that is free at its end swings out.
  const way = cornerPlace(scene, file, index) === null ? -hand : hand;
  const side = [-way * Math.sin(heading), way * Math.cos(heading)] as const;
  return {
    key: `radius:${index}`,
    kind: 'radius',
    element: index,
    place: [x, y, z],
    anchor: [x, y],
    grows: side,
    name: `Radius of ${named}`,
  };
}

function endHandle(
  scene: Scene,
  track: Track,
  file: SceneTrack,
  index: number,
  chainage: number,
  named: string,
): Handle {
  const { x, y, z, heading } = at(track, chainage);
  const free = index === file.alignment.length - 1 && endsInBend(scene, file);
  return {
    key: `end:${index}`,
    kind: 'end',
    element: index,
    place: [x, y, z],
    anchor: [x, y],
    grows: free ? null : [Math.cos(heading), Math.sin(heading)],
    name: `End of ${named}`,
  };
}

/** The track ends with a bend between two straights: they can turn and stretch to wherever its end is taken. */
function endsInBend(scene: Scene, file: SceneTrack): boolean {
  const [before, last] = file.alignment.slice(-2);
  const arc = file.alignment.length - (before?.kind === 'transition' ? 3 : 2);
  return last?.kind === 'straight' && file.alignment[arc]?.kind === 'arc' && cornerPlace(scene, file, arc) !== null;
}

function extendHandle(track: Track, file: SceneTrack, arm: number): Handle {
  const { x, y, z, heading } = at(track, track.length);
  const place = [x + arm * Math.cos(heading), y + arm * Math.sin(heading), z] as const;
  return {
    key: 'extend',
    kind: 'extend',
    element: file.alignment.length - 1,
    place,
    anchor: [x, y],
    grows: null,
    name: 'New track',
    keys: 'Up lays straight on, Down takes back, Left and Right bend',
  };
}
