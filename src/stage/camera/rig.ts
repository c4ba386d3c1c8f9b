import { subtract, type Vec3 } from '../../core/math/vec3.ts';
import type { CameraName } from '../../state/types.ts';
import { between, easeInOut, type Look, nearestTurn } from './look.ts';

/** Where the five cameras find what they look at. Null: there is nothing of the kind just now. */
export interface Sights {
  /** What the follow camera keeps in view. */
  subject(): Vec3 | null;
  /** Where the ride camera sits, turned by the hand's angles. */
  ride(): Look | null;
  eye(azimuth: number): Look;
  down(): Look;
  /** Height of picture that shows the whole railway, m. */
  whole(): number;
}

/** Length of a camera move, ms. */
const moveTime = 600;

/** Length of a flight from one view of a tour to the next, ms: slow enough to see where one comes to. */
const flightTime = 1500;

/** The follow camera starts out no further away than this share of the whole railway's height of picture. */
const followShare = 0.6;

const deg = Math.PI / 180;
const lowestElevation = -12 * deg;
const highestElevation = 88 * deg;

/** Nearest and widest picture, m and multiples of the whole railway's height. */
const nearestHeight = 0.02;
const widest = 2.5;

/** Holds the look of each camera, moves from one to another, and obeys the hand. Knows no three and no DOM. */
export class CameraRig {
  mode: CameraName = 'walk';
  look: Look;
  /** Walk and follow: the look the person has turned to. */
  private free: Look;
  private eyeAzimuth: number;
  /** Where the head is turned from where eye height and ride would look, rad, and the angle of view as a multiple of theirs. */
  private eyeHead = { up: 0, zoom: 1 };
  private rideHead = { aside: 0, up: 0, zoom: 1 };
  private top: Look | null = null;
  /** The person has moved the picture by hand. */
  touched = false;
  private flight: { readonly from: Look; readonly start: number; readonly time: number; readonly lift: number } | null =
    null;

  constructor(
    start: Look,
    private readonly sights: Sights,
    private readonly reducedMotion: () => boolean,
  ) {
    this.look = start;
    this.free = start;
    this.eyeAzimuth = start.azimuth;
  }

  /** Starts out with a camera, without a move. */
  begin(mode: CameraName): void {
    this.mode = mode;
    this.look = this.goal();
  }

  /** Takes another first look, without a move. */
  restart(look: Look): void {
    this.free = look;
    this.eyeAzimuth = look.azimuth;
    this.top = null;
  }

  get moving(): boolean {
    return this.flight !== null;
  }

  /** Changes to a camera at `now` (ms), in one move. */
  change(mode: CameraName, now: number): void {
    if (mode === this.mode) return;
    if (mode === 'walk' || mode === 'follow') this.free = this.keepable();
    if (mode === 'follow') {
      this.free = { ...this.free, height: Math.min(this.free.height, followShare * this.sights.whole()) };
    }
    if (mode === 'eye') {
      this.eyeAzimuth = this.look.elevation > 80 * deg ? this.free.azimuth : this.look.azimuth;
      this.eyeHead = { up: 0, zoom: 1 };
    }
    if (mode === 'ride') this.rideHead = { aside: 0, up: 0, zoom: 1 };
    if (mode === 'down') this.top = this.sights.down();
    this.mode = mode;
    this.startFlight(now);
  }

  /** Goes back to walking round with a first look, from whichever camera it was, in one move. */
  showWhole(look: Look, now: number): void {
    this.mode = 'walk';
    this.restart(look);
    this.touched = false;
    this.startFlight(now);
  }

  /** Looks straight down on all there is to see anew, in one move. */
  lookDown(now: number): void {
    this.top = this.sights.down();
    this.startFlight(now);
  }

  /** Moves to a look in walk and follow; the other cameras stay what they are. */
  goTo(look: Look, now: number): void {
    if (this.mode !== 'walk' && this.mode !== 'follow') return;
    this.free = look;
    this.startFlight(now);
  }

  /**
   * Flies to a camera, in one slow move that draws back where it goes far, so that the railway is seen on the way. `look` is where walk and
   * follow come to; the other cameras find theirs.
   */
  fly(mode: CameraName, look: Look | null, now: number): void {
    if (look !== null) this.free = look;
    this.eyeAzimuth = this.look.azimuth;
    this.eyeHead = { up: 0, zoom: 1 };
    this.rideHead = { aside: 0, up: 0, zoom: 1 };
    if (mode === 'down') this.top = this.sights.down();
    this.mode = mode;
    const goal = this.goal();
    const away = Math.hypot(...subtract(goal.target, this.look.target));
    const near = Math.max(goal.height, this.look.height);
    this.startFlight(now, flightTime, Math.log(Math.max(1, Math.min(away, this.sights.whole()) / near)));
  }

  /** Brings the look up to date. Returns whether a move is still going on. */
  step(now: number): boolean {
    const goal = this.goal();
    if (this.flight === null) {
      this.look = goal;
      return false;
    }
    const share = (now - this.flight.start) / this.flight.time;
    if (share >= 1) {
      this.flight = null;
      this.look = goal;
      return false;
    }
    const eased = easeInOut(Math.max(0, share));
    const look = between(this.flight.from, goal, eased);
    this.look = { ...look, height: look.height * Math.exp(4 * eased * (1 - eased) * this.flight.lift) };
    return true;
  }

  /** Turns the eye about its target (or the head, where the eye has its place), rad. */
  turn(azimuth: number, elevation: number): void {
    this.interrupt();
    switch (this.mode) {
      case 'walk':
      case 'follow':
        this.free = {
          ...this.free,
          azimuth: this.free.azimuth + azimuth,
          elevation: Math.min(highestElevation, Math.max(lowestElevation, this.free.elevation + elevation)),
        };
        break;
      case 'eye':
        this.eyeAzimuth += azimuth;
        this.eyeHead.up = Math.min(0.9, Math.max(-0.9, this.eyeHead.up + elevation));
        break;
      case 'ride':
        this.rideHead.aside += azimuth;
        this.rideHead.up = Math.min(1.2, Math.max(-1.2, this.rideHead.up + elevation));
        break;
      case 'down':
        this.pan(azimuth / 3, -elevation / 3);
    }
  }

  /** Makes the picture's height `factor` times as large. */
  zoom(factor: number): void {
    this.interrupt();
    const held = (height: number): number => Math.min(widest * this.sights.whole(), Math.max(nearestHeight, height));
    if (this.mode === 'down' && this.top !== null) this.top = { ...this.top, height: held(this.top.height * factor) };
    else if (this.mode === 'eye') this.eyeHead.zoom = Math.min(1.6, Math.max(0.08, this.eyeHead.zoom * factor));
    else if (this.mode === 'ride') this.rideHead.zoom = Math.min(1.8, Math.max(0.3, this.rideHead.zoom * factor));
    else this.free = { ...this.free, height: held(this.free.height * factor) };
  }

  /** Moves the picture by shares of its height: right and up. */
  pan(right: number, up: number): void {
    this.interrupt();
    if (this.mode === 'down' && this.top !== null) this.top = panned(this.top, right, up);
    else if (this.mode === 'walk') this.free = panned(this.free, right, up);
    else if (this.mode === 'eye') this.turn(-right, -up);
  }

  private interrupt(): void {
    this.touched = true;
    if (this.flight === null) return;
    this.flight = null;
    if (this.mode === 'walk' || this.mode === 'follow') this.free = this.look;
  }

  /** `lift`: logarithm of how much wider the picture is half-way. */
  private startFlight(now: number, time = moveTime, lift = 0): void {
    this.flight = this.reducedMotion() ? null : { from: this.look, start: now, time, lift };
  }

  /** The present look as one to walk on from: not from inside a cab, not from the zenith. */
  private keepable(): Look {
    const { look } = this;
    if (this.mode === 'walk' || this.mode === 'follow') return look;
    const azimuth = nearestTurn(this.free.azimuth, look.azimuth);
    return this.mode === 'down'
      ? { ...this.free, azimuth, target: look.target, height: look.height }
      : { ...this.free, azimuth };
  }

  private goal(): Look {
    switch (this.mode) {
      case 'walk':
        return this.free;
      case 'follow': {
        const subject = this.sights.subject();
        return subject === null ? this.free : { ...this.free, target: subject };
      }
      case 'eye': {
        const look = this.sights.eye(this.eyeAzimuth);
        return turnHead(look, 0, this.eyeHead.up, this.eyeHead.zoom);
      }
      case 'ride': {
        const look = this.sights.ride();
        if (look === null) return this.free;
        return turnHead(look, this.rideHead.aside, this.rideHead.up, this.rideHead.zoom);
      }
      case 'down':
        this.top ??= this.sights.down();
        return this.top;
    }
  }
}

/** The same eye, looking elsewhere: head turned aside and up (rad), angle of view times `zoom`. */
export function turnHead(look: Look, aside: number, up: number, zoom: number): Look {
  const far = look.height / 2 / Math.tan(look.field / 2);
  const field = look.field * zoom;
  const azimuth = look.azimuth + aside;
  const elevation = Math.min(1.5, Math.max(-1.5, look.elevation - up));
  const eye = placed(look.target, look.azimuth, look.elevation, far);
  return {
    target: placed(eye, azimuth, elevation, -far),
    azimuth,
    elevation,
    height: 2 * far * Math.tan(field / 2),
    field,
  };
}

function placed(from: Vec3, azimuth: number, elevation: number, far: number): Vec3 {
  const level = far * Math.cos(elevation);
  return [
    from[0] + level * Math.cos(azimuth),
    from[1] + level * Math.sin(azimuth),
    from[2] + far * Math.sin(elevation),
  ];
}

function panned(look: Look, right: number, up: number): Look {
  const x = right * look.height;
  const y = up * look.height;
  const sin = Math.sin(look.elevation);
  const a = Math.cos(look.azimuth);
  const b = Math.sin(look.azimuth);
  return {
    ...look,
    target: [
      look.target[0] - x * b - y * sin * a,
      look.target[1] + x * a - y * sin * b,
      look.target[2] + y * Math.cos(look.elevation),
    ],
  };
}
