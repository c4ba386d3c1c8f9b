import type { StudyHooks } from '../../../core/study/index.ts';
import type { Choice } from '../../../core/study/search/index.ts';
import type { GradePoint } from '../../../core/track/types.ts';
import type { Address, Scene } from '../../../scene/index.ts';
import type { Gauge } from '../gauges.ts';
import type { Probe, Setting } from '../types.ts';

/** A number of the scene to be chosen, in the unit of its field: from one end to the other in steps that a builder can set. */
export interface RouteNumber extends Choice {
  readonly at: Address;
}

/** A corner of the room, mm, as a scene has it. */
export interface RoomCorner {
  readonly xMm: number;
  readonly yMm: number;
}

/** What of a room can be in the way of a route: its walls, what stands in it, or the want of a board under a deck. */
export type RoomKind = 'room' | 'obstacle' | 'boards';

/** What an obstacle takes in plan, mm: corners one after the other round it, or a circle. */
export type RouteShape =
  | { readonly outline: readonly RoomCorner[] }
  | { readonly round: RoomCorner & { readonly diameterMm: number } };

/** What decks may not leave, run into or hang over. */
export interface RouteRoom {
  /** One after the other round the room; null: no walls. */
  readonly corners: readonly RoomCorner[] | null;
  /** `top`: height in the scene, m, above which a deck passes over it; null: up to the ceiling. */
  readonly obstacles: readonly (RouteShape & { readonly name: string; readonly top: number | null })[];
  /** Boards that carry the railway, upright rectangles from their corner nearest the origin; none: boards are no limit. */
  readonly boards: readonly (RoomCorner & { readonly lengthMm: number; readonly widthMm: number })[];
}

/** Where a deck is most in the way of something of the room: by how much, m, and at what chainage of which track. */
export interface RoomConflict {
  readonly kind: RoomKind;
  /** Of the obstacle: its name, and its number among the room's, from 0; two may be called the same. */
  readonly name: string | null;
  readonly index: number | null;
  readonly trackId: string;
  readonly chainage: number;
  readonly by: number;
}

/** What a route is wanted for: the least ruling grade, the greatest smallest margin, or all that no other beats in grade, room and margin together. */
export type RouteAim = 'grade' | 'margin' | 'front';

/** What may not be missed; SI. Null: not looked at. */
export interface RouteLimits {
  /** Least radius in plan. */
  readonly radius: number | null;
  readonly verticalRadius: number | null;
  /** Steepest grade at any place, a ratio. */
  readonly steepest: number | null;
  /** Rail top to rail top where the track passes over itself or another. */
  readonly headroom: number | null;
  readonly room: RouteRoom | null;
}

/** A route to be made better. Plain data: it can cross a worker boundary as it is. */
export interface RouteQuestion {
  readonly scene: Scene;
  /** The track whose grade rules and whose ends count. It does not begin on another. */
  readonly trackId: string;
  /** One to eight. */
  readonly numbers: readonly RouteNumber[];
  readonly aim: RouteAim;
  /** The track must end where it ends now, in the same direction and at the same height. */
  readonly endKept: boolean;
  /** Numbers of the scene that are worked out, from what they are now, so that the end is kept; as many as it takes, at most three. */
  readonly solved: readonly Address[];
  /** Null: heights as the scene has them. Else those of least ruling grade are found for every plan, its ends and these chainages, m, as high as now. */
  readonly heights: { readonly held: readonly number[] } | null;
  readonly limits: RouteLimits;
  /** How grades are counted: what a curve is worth, as a length over its radius, m; the train over which the mean is taken, m, 0 for single places; which climbs count. */
  readonly grade: {
    readonly curveLength: number;
    readonly window: number;
    readonly towards: 'end' | 'start' | 'both';
  };
  readonly trialIds: readonly string[];
  readonly gauge: Gauge;
  /** Railways looked at at most, by the quasi-static pass. */
  readonly probes: number;
}

/** What a route misses, or what stands in the way of laying it. */
export type RouteMiss = 'radius' | 'vertical-radius' | 'steepest' | 'headroom' | RoomKind | 'end' | 'heights';

/** A route that was laid and measured; SI. */
export interface RouteFound {
  /** In the order of the question's numbers, and of those worked out. */
  readonly values: readonly number[];
  readonly solved: readonly number[];
  /** Both, as they are to be set. */
  readonly settings: readonly Setting[];
  /** Heights that were found for it; null where the scene's own stay. */
  readonly points: readonly GradePoint[] | null;
  /** It is as a builder sets it; false: its heights are not rounded yet. */
  readonly rounded: boolean;
  /** The railway with all that. */
  readonly scene: Scene;
  /** Ruling grade with what curves are worth, a ratio. */
  readonly ruling: number;
  readonly steepest: number;
  /** Tightest radius in plan; Infinity on a straight line. */
  readonly radius: number;
  /** The smallest upright rectangle that holds the decks of the tracks that change, and its area. */
  readonly across: number;
  readonly along: number;
  readonly area: number;
  /** Limits missed; none for an answer. */
  readonly misses: readonly RouteMiss[];
  /** What of the room is in the way, each where it is most. */
  readonly conflicts: readonly RoomConflict[];
  /** Smallest margin of all trials as a share of its own plenty, by the quasi-static pass and in full runs; null: not run. A trial that does not arrive counts as no more than 0. */
  readonly quickMargin: number | null;
  readonly margin: number | null;
  /** Whether all is well by the quasi-static pass, and whether the full runs give the same verdict; null: not run. */
  readonly quickPasses: boolean | null;
  readonly agrees: boolean | null;
  /** The trials in full; null: not run. */
  readonly probe: Probe | null;
}

/** A railway that was looked at and keeps every limit, by the quasi-static pass. */
export interface RouteLooked {
  readonly values: readonly number[];
  /** As they are to be set, those worked out among them. */
  readonly settings: readonly Setting[];
  readonly ruling: number;
  readonly across: number;
  readonly along: number;
  readonly area: number;
  readonly quickMargin: number | null;
}

/** How sure an answer is: every setting was looked at; nothing a step away is better; or only the best found. */
export type RouteCertainty = 'every-setting' | 'no-better-neighbour' | 'best-found';

export interface RouteAnswer {
  /** The route as it is now, by the same measure; null when it cannot be laid. */
  readonly present: RouteFound | null;
  /** One route for a single aim; for 'front' those that no other found beats, by ruling grade. Empty: nothing keeps every limit. */
  readonly routes: readonly RouteFound[];
  /** For margins by the quasi-static pass, unless `inFull`. Of the heights of a given plan the least ruling grade is always proven. */
  readonly certainty: RouteCertainty;
  /** Every railway looked at that keeps the limits was run in full too, so that the certainty is of full runs. */
  readonly inFull: boolean;
  /** All that keep every limit, those answered among them, by ruling grade. */
  readonly looked: readonly RouteLooked[];
  /** Places in the ranges in all, and how many were looked at. */
  readonly settings: number;
  readonly probes: number;
  /** How often each limit stood in the way. */
  readonly inTheWay: readonly {
    readonly miss: RouteMiss | 'cannot-be-laid';
    /** Of the obstacle. */
    readonly name: string | null;
    readonly times: number;
  }[];
  /** Why the first that could not be laid could not. */
  readonly reason: string | null;
  /** False when it was stopped: what is said is then what was found until then. */
  readonly whole: boolean;
}

export interface RouteHooks extends StudyHooks {
  /** Told whenever something better is found: the best yet, by the quasi-static pass. */
  readonly onFound?: (best: readonly RouteFound[]) => void;
}
