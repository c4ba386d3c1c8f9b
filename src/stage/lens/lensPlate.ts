import { dot, subtract, type Vec3 } from '../../core/math/vec3.ts';
import { frontReach, pointOnVehicle, rearReach } from '../../core/stock/index.ts';
import type { JointGeometry } from '../../core/stock/types.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { Track, TrackPoint } from '../../core/track/types.ts';
import { formatForce } from '../../core/units/index.ts';
import type { SessionState } from '../../state/types.ts';
import { gradeWords, lengthWords } from '../label/words.ts';
import type { Post } from '../supports/posts.ts';
import type { Plate } from '../view/plate.ts';
import { stripTop, stripUnderside, type WayMeasures } from '../way/measures.ts';
import type { LensFrame, LensSubject } from './lensFrame.ts';
import type { LensCircle } from './lensPlace.ts';

/** What the lens's lettering is made from. */
export interface LensPlateInput {
  readonly frame: LensFrame;
  readonly circle: LensCircle;
  readonly subject: LensSubject;
  readonly names: { readonly leading: string; readonly trailing: string };
  readonly geometry: JointGeometry;
  /** N, draft positive; null before a run. */
  readonly force: number | null;
  readonly track: Track;
  readonly measures: WayMeasures;
  /** A support under the lens, if there is one, and whether a failing finding names it. */
  readonly post: { readonly post: Post; readonly marked: boolean } | null;
  /** Which way the joint fails: in height, across the track. */
  readonly fails: { readonly up: boolean; readonly aside: boolean };
  /** Heads as they would stand with the cure being tried. */
  readonly ghostHeads: { readonly leading: Vec3; readonly trailing: Vec3 } | null;
  readonly units: Pick<SessionState, 'lengthUnit' | 'gradeForm'>;
}

interface Pixel {
  x: number;
  y: number;
}

/** Below this a joint hangs slack, N: the force rows of the run hold exact zeros there. */
const slack = 0;

/** The unbroken grade is drawn where the rail leaves it by this much inside the lens, m. */
const worthBreak = 8e-5;

/** Width of a letter of a boxed number, px, and what the box has beside it. */
const letterWidth = 7.3;
const boxPadding = 16;
/** How far a box may reach over the rim of a small lens, px: less than the lens keeps from the stage's edge. */
const beyondRim = 14;
/** A force's arrow is at least this long, px. */
const leastArrow = 18;

/** Width of a letter of a vehicle's name, px. */
const nameLetter = 6.9;
const nameGap = 8;
const nameLine = 18;

/** Letters and dimensions over the lens's picture. */
export function drawLensPlate(plate: Plate, input: LensPlateInput): void {
  const to = projector(input);
  names(plate, input, to);
  if (input.frame.view === 'side') {
    ghost(plate, input, to);
    unbrokenGrade(plate, input, to);
    grades(plate, input, to);
    support(plate, input, to);
    force(plate, input, to);
    dimension(plate, input, to, 'up');
  } else {
    dimension(plate, input, to, input.frame.view === 'above' ? 'aside' : 'up');
    if (input.frame.view === 'above') force(plate, input, to);
  }
}

function projector({ frame, circle }: LensPlateInput): (place: Vec3) => Pixel {
  const scale = circle.radius / frame.radius;
  return (place) => {
    const from = subtract(place, frame.centre);
    return { x: circle.x + scale * dot(from, frame.right), y: circle.y - scale * dot(from, frame.up) };
  };
}

function names(plate: Plate, input: LensPlateInput, to: (place: Vec3) => Pixel): void {
  const { frame, subject, circle } = input;
  if (frame.view === 'along') return;
  const inward = 0.36 * frame.radius;
  const lift = frame.view === 'side' ? 0.62 * frame.radius : 0;
  const widest = (y: number): number => Math.sqrt(Math.max(0, (circle.radius - 10) ** 2 - (y - circle.y) ** 2));
  const places = [
    {
      name: input.names.leading,
      at: pointOnVehicle(subject.placedLeading, -rearReach(subject.leading) + inward, 0, 0),
    },
    {
      name: input.names.trailing,
      at: pointOnVehicle(subject.placedTrailing, frontReach(subject.trailing) - inward, 0, 0),
    },
  ];
  const heads = places.map(({ name, at }) => {
    const head = to([at[0], at[1], frame.heads.leading[2] + lift]);
    const y = frame.view === 'above' ? circle.y + 0.7 * circle.radius : head.y;
    return { name, x: head.x, y, half: (name.length * nameLetter) / 2 };
  });
  heads.sort((a, b) => a.x - b.x);
  const [left, right] = heads;
  // Side by side where both fit into their halves of the lens, else one below the other.
  const fits = Math.max(left.half, right.half) * 2 + nameGap < widest(Math.max(left.y, right.y));
  if (!fits) right.y += nameLine;
  [left, right].forEach(({ name, x, y, half }, i) => {
    const room = Math.max(0, widest(y) - half);
    const inside = Math.min(circle.x + room, Math.max(circle.x - room, x));
    const own = !fits
      ? inside
      : i === 0
        ? Math.min(inside, circle.x - half - 3)
        : Math.max(inside, circle.x + half + 3);
    plate.text(`name${i}`, own, y, name, 'stage-lens-name');
  });
}

/** The offset of the heads as a dimension: two centre lines, arrows, and the number in a box. */
function dimension(plate: Plate, input: LensPlateInput, to: (place: Vec3) => Pixel, way: 'up' | 'aside'): void {
  const { frame, circle, geometry, units, fails } = input;
  // Aside it is the bodies' ends that the core compares, up it is the heads.
  const [a, b] = (way === 'up' ? [frame.heads.leading, frame.heads.trailing] : bodyEnds(input.subject)).map(to);
  const tone = fails[way] ? 'mark' : 'ink';
  const amount = Math.abs(way === 'up' ? geometry.verticalOffset : geometry.lateralOffset);
  const words = lengthWords(amount, units, amount < 1e-4 ? 2 : 1);
  const x = circle.x + 0.5 * circle.radius;
  const out = 0.34 * circle.radius;
  const half = (words.length * letterWidth + boxPadding) / 2;
  [a, b].forEach((head, i) => {
    plate.line(
      `centre${i}`,
      Math.min(head.x - out, circle.x - 0.2 * circle.radius),
      head.y,
      x + 8,
      head.y,
      'stage-lens-centre',
    );
  });
  const top = Math.min(a.y, b.y);
  const bottom = Math.max(a.y, b.y);
  arrow(plate, 'dimension-top', { x, y: top - 24 }, { x, y: top }, `stage-lens-${tone}`);
  arrow(plate, 'dimension-bottom', { x, y: bottom + 24 }, { x, y: bottom }, `stage-lens-${tone}`);
  boxed(
    plate,
    'dimension',
    { x: Math.min(x + 12, circle.x + circle.radius + beyondRim - 2 * half) + half, y: (top + bottom) / 2 },
    words,
    `stage-lens-${tone}`,
  );
}

/** Middles of the two facing body ends at the height of their couplings. */
function bodyEnds({ leading, trailing, placedLeading, placedTrailing }: LensSubject): [Vec3, Vec3] {
  return [
    pointOnVehicle(placedLeading, -rearReach(leading), 0, leading.rear.coupling.headHeight),
    pointOnVehicle(placedTrailing, frontReach(trailing), 0, trailing.front.coupling.headHeight),
  ];
}

/** The coupler force as an arrow in the carpet's colours. */
function force(plate: Plate, input: LensPlateInput, to: (place: Vec3) => Pixel): void {
  const { frame, circle } = input;
  if (input.force === null) return;
  const a = to(frame.heads.leading);
  const b = to(frame.heads.trailing);
  const left = a.x <= b.x ? a : b;
  const kind = input.force > slack ? 'draft' : input.force < -slack ? 'buff' : 'slack';
  const words =
    kind === 'slack' ? 'slack' : formatForce(Math.abs(input.force), { digits: Math.abs(input.force) < 0.1 ? 3 : 2 });
  const width = words.length * letterWidth + boxPadding;
  const near = circle.x - 0.2 * circle.radius;
  // In a small lens the box makes room for the arrow.
  const x = Math.min(circle.x - 0.8 * circle.radius + width / 2, near - leastArrow - 3 - width / 2);
  // In the along and above views the heads lie where they lie; the arrow stays on the left.
  const y = left.y;
  if (kind !== 'slack') {
    const far = x + width / 2 + 3;
    const [from, end] = kind === 'buff' ? [far, near] : [near, far];
    arrow(plate, 'force', { x: from, y }, { x: end, y }, `stage-lens-${kind}`, 9);
  }
  boxed(plate, 'force-box', { x, y }, words, `stage-lens-${kind}`);
}

function grades(plate: Plate, input: LensPlateInput, to: (place: Vec3) => Pixel): void {
  const { track, geometry, frame, measures, units } = input;
  const point = {} as TrackPoint;
  const down = stripTop(measures) + measures.underlay + measures.deck / 2;
  for (const side of [-1, 1] as const) {
    trackPoint(track, geometry.chainage + side * 0.52 * frame.radius, point);
    const at = to([point.x, point.y, point.z - down]);
    plate.text(`grade${side}`, at.x, at.y + 4, gradeWords(point.grade, units), 'stage-lens-letter');
  }
}

/** Where the rail would run if the grade that the train comes from went on: dashed, where that is another line. */
function unbrokenGrade(plate: Plate, input: LensPlateInput, to: (place: Vec3) => Pixel): void {
  const { track, geometry, frame, post } = input;
  const point = {} as TrackPoint;
  const reach = 0.92 * frame.radius;
  trackPoint(track, geometry.chainage - reach, point);
  const start: Vec3 = [point.x, point.y, point.z];
  const { grade } = point;
  trackPoint(track, geometry.chainage + reach, point);
  const end: Vec3 = [point.x, point.y, start[2] + 2 * reach * grade];
  if (Math.abs(end[2] - point.z) < worthBreak) return;
  const [a, b] = [to(start), to(end)];
  plate.line('grade-on', a.x, a.y, b.x, b.y, `stage-lens-dash stage-lens-${post?.marked ? 'mark' : 'ink'}`);
}

function support(plate: Plate, input: LensPlateInput, to: (place: Vec3) => Pixel): void {
  const { post: found, measures, units } = input;
  if (found === null || found.post.index === null) return;
  const { post, marked } = found;
  const number = found.post.index + 1;
  const [x, y, z] = post.centre;
  const at = to([x, y, z - stripUnderside(measures)]);
  const tone = marked ? 'mark' : 'letter';
  const off = Math.abs(post.departure);
  plate.text('support', at.x, at.y + 15, `support ${number}`, `stage-lens-letter stage-lens-${tone}-text`);
  if (off < 5e-5) return;
  const words = `${lengthWords(off, units)} ${post.departure > 0 ? 'high' : 'low'}`;
  plate.text('support-off', at.x, at.y + 30, words, `stage-lens-letter stage-lens-${tone}-text`);
}

/** Heads with the cure, dashed. */
function ghost(plate: Plate, input: LensPlateInput, to: (place: Vec3) => Pixel): void {
  const { ghostHeads, subject, frame, circle } = input;
  if (ghostHeads === null) return;
  const scale = circle.radius / frame.radius;
  for (const [key, at, coupling, out] of [
    ['leading', ghostHeads.leading, subject.leading.rear.coupling, 1],
    ['trailing', ghostHeads.trailing, subject.trailing.front.coupling, -1],
  ] as const) {
    const face = to(at);
    const sign = out * Math.sign(dot(frame.ahead, frame.right)) || 1;
    const length = 0.0035 * scale;
    const high = coupling.facingHeight * scale;
    plate.mark(`ghost-${key}`, 'rect', {
      x: sign > 0 ? face.x : face.x - length,
      y: face.y - high / 2,
      width: length,
      height: high,
      class: 'stage-lens-dash stage-lens-mark stage-lens-hollow',
    });
  }
}

function arrow(plate: Plate, key: string, from: Pixel, end: Pixel, look: string, size = 6): void {
  const away = Math.hypot(end.x - from.x, end.y - from.y) || 1;
  const ux = (end.x - from.x) / away;
  const uy = (end.y - from.y) / away;
  const back = { x: end.x - ux * size * 1.3, y: end.y - uy * size * 1.3 };
  const half = size * 0.55;
  if (size > 6) plate.line(`${key}-halo`, from.x, from.y, end.x, end.y, 'stage-lens-halo');
  plate.line(
    `${key}-shaft`,
    from.x,
    from.y,
    back.x,
    back.y,
    `${look} stage-lens-shaft${size > 6 ? ' stage-lens-thick' : ''}`,
  );
  const points = [
    [end.x, end.y],
    [back.x - uy * half, back.y + ux * half],
    [back.x + uy * half, back.y - ux * half],
  ];
  plate.mark(`${key}-head`, 'polygon', {
    points: points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' '),
    class: `${look} stage-lens-fill`,
  });
}

function boxed(plate: Plate, key: string, middle: Pixel, words: string, look: string): void {
  const width = words.length * letterWidth + boxPadding;
  plate.mark(`${key}-ground`, 'rect', {
    x: middle.x - width / 2,
    y: middle.y - 11,
    width,
    height: 22,
    rx: 3,
    class: `${look} stage-lens-box`,
  });
  plate.text(`${key}-words`, middle.x, middle.y + 4.5, words, `${look} stage-lens-number`);
}
