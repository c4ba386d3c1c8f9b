import { square } from '../math/index.ts';
import type { Track, Vehicle } from '../stock/index.ts';
import { type TrackPoint, trackPoint } from '../track/index.ts';
