import { jointNumber, vehicleName } from '../../core/findings/index.ts';
import type { Vec3 } from '../../core/math/vec3.ts';
import { trackPoint } from '../../core/track/index.ts';
import type { TrackPoint } from '../../core/track/types.ts';
import { namingOf, placeWords } from '../../state/index.ts';
import type { SessionState } from '../../state/types.ts';
import { FindingLabels, type StageLabel } from '../label/findingLabels.ts';
import { type Box, crowdOf } from '../label/placing.ts';
import { scaleBar } from '../label/scaleBar.ts';
import { clockWords, lengthWords, lensWords, railwayWords, titleWords } from '../label/words.ts';
import { tangents } from '../lens/lensPlace.ts';
import { drawLensPlate } from '../lens/lensPlate.ts';
import type { Post } from '../supports/posts.ts';
import type { Director } from './director.ts';
import { Plate } from './plate.ts';
import { ringRadius, type Shown, type ShownLens } from './shown.ts';
import { blamedSupports, jointFails, jointFailsHow, namedFinding, nearFinding, otherChainage } from './subjects.ts';

/** Elements of the page that the lettering moves and fills. */
export interface LetteringElements {
  readonly plate: SVGElement;
  readonly title: HTMLElement;
  readonly subtitle: HTMLElement;
  readonly titleBox: HTMLElement;
  readonly bar: HTMLElement;
  readonly controls: HTMLElement;
  readonly named: HTMLElement;
  readonly near: HTMLElement;
}

/** Room for the scale bar, px, and its place from the stage's lower right corner. */
const barRoom = 150;
const barRight = 24;
const barFoot = 18;
/** Between scale bar and controls, px. */
const barApart = 12;

/** Free margin of labels to the stage's edge, px. */
const labelMargin = 12;

/** Height over the rail that leaders point to where there is no joint, m. */
const pointAt = 0.004;

/** Rods crowd a label less than the railway does: marks along them lie this far apart, px. */
const rodPitch = 30;

/** A finding's moment: within this many seconds of it the leader goes to the joint itself. */
const momentNear = 0.08;

/** Writes titles, rings, leaders, scale bar and lens letters over each frame. */
export class Lettering {
  private readonly plate: Plate;
  private readonly labels = new FindingLabels();
  private title = '';
  private subtitle = '';
  private times = 1;
  private lens: ShownLens | null = null;

  constructor(
    private readonly elements: LetteringElements,
    private readonly director: Director,
  ) {
    this.plate = new Plate(elements.plate);
  }

  draw(shown: Shown | null): void {
    const { plate, elements } = this;
    plate.begin();
    if (shown === null) {
      elements.named.style.visibility = 'hidden';
      elements.near.style.visibility = 'hidden';
      plate.end();
      return;
    }
    const { lens } = shown;
    if (lens !== null) this.times = timesNearer(shown, lens);
    this.writeTitle(shown.state, shown.time, lens);
    this.drawBar(shown);
    if (lens === null && shown.state.camera !== 'ride') this.drawFindings(shown);
    else {
      elements.named.style.visibility = 'hidden';
      elements.near.style.visibility = 'hidden';
      if (lens !== null) this.drawLens(shown, lens);
    }
    this.drawRing(shown);
    plate.end();
  }

  /** Says the time at once, without waiting for the picture that goes with it. */
  tellTime(state: SessionState, time: number): void {
    this.writeTitle(state, time, this.lens);
  }

  private writeTitle(state: SessionState, time: number, lens: ShownLens | null): void {
    this.lens = lens;
    let title = titleWords(state, time);
    let subtitle = railwayWords(state);
    if (lens !== null && state.lens.open && state.trial !== null) {
      const { joint } = lens;
      const geometry = this.director.world.train?.joints[joint];
      const at =
        geometry === undefined ? '' : ` at ${placeWords(otherChainage(state.trial, geometry.chainage), state)}`;
      title = `Joint ${jointNumber(namingOf(state), joint)}${at}, ${lensWords[state.lens.view]}`;
      subtitle = `${clockWords(time, 3)} · ${this.times} times nearer than the stage`;
    }
    if (title !== this.title) this.elements.title.textContent = title;
    if (subtitle !== this.subtitle) this.elements.subtitle.textContent = subtitle;
    this.title = title;
    this.subtitle = subtitle;
  }

  private drawBar({ look, width, height, state, lens }: Shown): void {
    const hide = state.camera === 'ride' || lens !== null;
    this.elements.bar.style.visibility = hide ? 'hidden' : 'visible';
    if (hide) return;
    const { length, pixels } = scaleBar(height / look.height, Math.min(barRoom, width / 4), state.lengthUnit);
    const right = width - barRight + 0.5;
    const left = Math.round(right - pixels) + 0.5;
    const controls = boxIn(this.elements.controls, this.elements.plate);
    // On a narrow stage the controls reach under the bar: it stands above them then.
    const foot = left - barApart < controls.left + controls.width ? height - controls.top + barApart : barFoot;
    const y = height - foot + 0.5;
    const middle = (left + right) / 2;
    this.plate.mark('bar', 'path', {
      d: `M${left} ${y - 4}v8M${left} ${y}H${right}M${right} ${y - 4}v8M${middle} ${y - 2}v4`,
      class: 'stage-bar-line',
    });
    const words =
      state.lengthUnit === 'mm' && length >= 0.001 ? lengthWords(length, state, 0) : lengthWords(length, state);
    if (this.elements.bar.textContent !== words) this.elements.bar.textContent = words;
    this.elements.bar.style.transform = `translate(${Math.round(middle)}px, ${Math.round(y - 22)}px) translateX(-50%)`;
  }

  private drawRing({ ring, state, lens }: Shown): void {
    if (ring === null) return;
    const joint = state.chosenJoint ?? lens?.joint ?? null;
    const tone = joint === null || jointFails(state, joint) ? 'mark' : 'ink';
    this.plate.mark('ring', 'circle', {
      cx: ring.x,
      cy: ring.y,
      r: ringRadius,
      class: `stage-ring stage-ring-${tone}`,
    });
  }

  private drawFindings(shown: Shown): void {
    const { state, width, height, toPixel } = shown;
    const { elements } = this;
    const taken: Box[] = [boxIn(elements.titleBox, elements.plate)];
    const labels: StageLabel[] = [];
    for (const [key, index, element] of [
      ['named', namedFinding(state), elements.named],
      ['near', nearFinding(state), elements.near],
    ] as const) {
      if (index === null) {
        element.style.visibility = 'hidden';
        continue;
      }
      const finding = state.result?.findings[index];
      const place = this.findingPlace(shown, index);
      const anchor = place === null ? null : toPixel(place);
      const inside =
        anchor !== null && shown.owns(anchor) && anchor.x > 0 && anchor.y > 0 && anchor.x < width && anchor.y < height;
      const onRing = shown.ring !== null && anchor !== null && near(shown.ring, anchor, ringRadius);
      labels.push({
        key,
        element,
        anchor: inside ? (onRing ? shown.ring : anchor) : null,
        tone: finding?.verdict === 'fails' ? 'mark' : 'ink',
        clear: onRing ? ringRadius : 0,
      });
    }
    const frame: Box = {
      left: labelMargin,
      top: labelMargin,
      width: width - 2 * labelMargin,
      height: Math.min(height - 2 * labelMargin - 34, boxIn(elements.controls, elements.plate).top - labelMargin),
    };
    const crowd = this.director.sights.outlines.flatMap((line) => crowdOf(line.map(toPixel)));
    const { train, standing } = this.director.world;
    // The train takes more room than its line.
    if (train !== null && standing) {
      const cars = train.placements.map((placed) => toPixel(placed.origin));
      for (let twice = 0; twice < 2; twice++) crowd.push(...crowdOf(cars));
    }
    for (const post of this.director.world.supports?.posts ?? []) {
      for (const rod of post.rods) {
        crowd.push(...crowdOf([toPixel([rod.x, rod.y, rod.foot]), toPixel([rod.x, rod.y, rod.head])], rodPitch));
      }
    }
    const strip = this.director.world.railway?.measures.stripWidth ?? 0;
    const clearance = Math.min(40, 4 + ((strip / 2) * height) / shown.look.height);
    this.labels.draw(this.plate, labels, frame, taken, crowd, clearance);
  }

  /** Where a finding is: the joint itself while the trial stands at its moment, else its place on the track. */
  private findingPlace({ state, time }: Shown, index: number): Vec3 | null {
    const finding = state.result?.findings[index];
    const { trial } = state;
    if (finding === undefined || trial === null) return null;
    const joint = this.director.jointOfFinding(index);
    if (joint !== null && Math.abs(time - finding.time) < momentNear) return this.director.sights.jointPlace(joint);
    const at = trackPoint(trial.path.track, otherChainage(trial, finding.chainage), {} as TrackPoint);
    return [at.x, at.y, at.z + pointAt];
  }

  private drawLens(shown: Shown, lens: ShownLens): void {
    const { plate, director } = this;
    const { state, ring } = shown;
    const { now, share, joint, frame, subject } = lens;
    const { world } = director;
    const fails = jointFails(state, joint);
    const tone = fails ? 'mark' : 'ink';
    if (ring !== null) {
      tangents({ ...ring, radius: ringRadius }, now).forEach(([x1, y1, x2, y2], i) => {
        plate.line(`tangent${i}`, x1, y1, x2, y2, `stage-tangent stage-leader-${tone}`);
      });
    }
    plate.mark('lens-shade', 'circle', { cx: now.x + 3, cy: now.y + 4, r: now.radius + 1, class: 'stage-lens-shade' });
    plate.mark('lens-outer', 'circle', { cx: now.x, cy: now.y, r: now.radius + 1.5, class: 'stage-lens-rim' });
    plate.mark('lens-inner', 'circle', { cx: now.x, cy: now.y, r: now.radius - 2, class: 'stage-lens-inner' });
    if (share < 1 || state.trial === null || world.train === null || world.railway === null) return;
    const geometry = world.train.joints[joint];
    const naming = namingOf(state);
    const { track } = state.trial.path;
    const on = state.trial.legs?.map((leg) => leg.trackId) ?? [state.trial.trackId];
    const blamed = ({ trackId, index }: Post): boolean =>
      blamedSupports(state).some((one) => one.trackId === trackId && one.support === index);
    const post = (world.supports?.posts ?? [])
      .filter((one) => one.index !== null && on.includes(one.trackId))
      .find(
        (one) =>
          Math.hypot(one.centre[0] - frame.centre[0], one.centre[1] - frame.centre[1]) < 0.8 * frame.radius &&
          Math.abs(one.centre[2] - frame.centre[2]) < frame.radius,
      );
    drawLensPlate(plate, {
      frame,
      circle: now,
      subject,
      names: { leading: vehicleName(naming, joint), trailing: vehicleName(naming, joint + 1) },
      geometry,
      force: lens.force,
      track,
      measures: world.railway.measures,
      post: post === undefined ? null : { post, marked: blamed(post) },
      fails: jointFailsHow(state, joint),
      ghostHeads: lens.ghostHeads,
      units: state,
    });
  }

  dispose(): void {
    this.plate.clear();
  }
}

/** How many times larger the open lens shows things than the stage does at its target, in whole numbers. */
function timesNearer({ look, height }: Shown, { open, frame }: ShownLens): number {
  return Math.max(1, Math.round(open.radius / frame.radius / (height / look.height)));
}

const near = (a: { x: number; y: number }, b: { x: number; y: number }, reach: number): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) < reach;

/** An element's place on the stage, px. */
function boxIn(element: Element, stage: Element): Box {
  const a = element.getBoundingClientRect();
  const b = stage.getBoundingClientRect();
  return { left: a.left - b.left, top: a.top - b.top, width: a.width, height: a.height };
}
