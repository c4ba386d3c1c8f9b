import type { Vec3 } from '../../core/math/vec3.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { Track } from '../../core/track/types.ts';
import type { DrawnPlan, Handle, RouteState } from '../../state/route/index.ts';
import type { Pixel, Shown } from '../view/shown.ts';
import { pathOf, planPoints } from './planPath.ts';

/** Radius of the mark on a place that is pointed out, and of those on chosen supports, px. */
const markRadius = 13;
const postRadius = 4;

const svgSpace = 'http://www.w3.org/2000/svg';

/** The lines of what a hand works at, over the picture: the track as it now is, or what is chosen in the room; arms of handles; marks. */
export class PlanLines {
  readonly element = document.createElementNS(svgSpace, 'svg');
  private readonly draft = this.path('stage-plan-draft');
  private readonly arms = this.path('stage-plan-arm');
  private readonly posts = this.path('stage-plan-posts');
  private readonly mark = document.createElementNS(svgSpace, 'circle');
  private points: { readonly track: Track; readonly points: readonly Vec3[] } | null = null;

  constructor() {
    this.element.classList.add('stage-plan');
    this.mark.classList.add('stage-plan-mark');
    this.mark.setAttribute('r', String(markRadius));
    this.element.append(this.mark);
  }

  private path(look: string): SVGPathElement {
    const path = document.createElementNS(svgSpace, 'path');
    path.classList.add(look);
    this.element.append(path);
    return path;
  }

  /** `newer`: the railway is another than the picture shows. */
  draw({ toPixel }: Shown, plan: DrawnPlan, newer: boolean, pointed: RouteState['pointed']): void {
    const { track, lines, handles } = plan;
    if (this.points?.track !== track) this.points = { track, points: planPoints(track) };
    const drawn = lines ?? [this.points.points];
    this.draft.setAttribute('d', drawn.map((line) => pathOf(line, toPixel)).join(''));
    this.draft.classList.toggle('stage-plan-newer', newer && lines === null);
    this.draft.classList.toggle('stage-plan-room', lines !== null);
    this.arms.setAttribute('d', lines === null ? armsOf(handles, toPixel) : '');
    this.posts.setAttribute('d', plan.posts.map((place) => ringAt(toPixel(place))).join(''));
    this.drawMark(plan, toPixel, pointed);
  }

  private drawMark({ track, trackId }: DrawnPlan, toPixel: Shown['toPixel'], pointed: RouteState['pointed']): void {
    const place = pointed?.trackId === trackId ? trackPoint(track, pointed.chainage) : null;
    const at = place === null ? null : toPixel([place.x, place.y, place.z]);
    this.mark.setAttribute('visibility', at === null ? 'hidden' : 'visible');
    if (at === null) return;
    this.mark.setAttribute('cx', at.x.toFixed(1));
    this.mark.setAttribute('cy', at.y.toFixed(1));
  }
}

function ringAt(at: Pixel | null): string {
  if (at === null) return '';
  const r = postRadius;
  return `M${(at.x - r).toFixed(1)} ${at.y.toFixed(1)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
}

function armsOf(handles: readonly Handle[], toPixel: Shown['toPixel']): string {
  const arm = (from: Handle | undefined, to: Handle | undefined): string =>
    from === undefined || to === undefined ? '' : pathOf([[...from.place], [...to.place]], toPixel);
  const named = (key: string): Handle | undefined => handles.find((one) => one.key === key);
  const last = handles.findLast(({ kind }) => kind === 'end');
  const corners = handles.filter(({ kind }) => kind === 'corner');
  return [
    arm(named('heading'), named('start')),
    arm(last, named('extend')),
    ...corners.map((corner) => arm(corner, named(`radius:${corner.element}`))),
  ].join('');
}
