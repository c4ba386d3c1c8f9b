import type { CurveDragChoice } from '../../core/dynamics/types.ts';
import type { Show, Standing } from '../../core/findings/index.ts';
import type { RiskId } from '../../core/risks/types.ts';
import type { GradeLine } from '../../core/track/index.ts';
import type { Scene } from '../../scene/index.ts';

/** What the page to pass on says of a railway: everything told, nothing laid out. Lengths m, masses kg, grades ratios, unless words. */
export interface ClubPage {
  readonly scene: Scene;
  readonly show: Show;
  readonly trials: readonly PageTrial[];
  readonly marks: readonly PageMark[];
  readonly tracks: readonly PageTrack[];
  readonly helices: readonly HelixCard[];
  /** Null where it was not asked for, or nothing climbs. */
  readonly tonnage: Tonnage | null;
  readonly visitors: readonly Visitor[];
  readonly assumptions: readonly Assumption[];
  /** False: the work was called off, and what is missing is not there. */
  readonly whole: boolean;
}

/** One working of one train: a trial of the scene, or one driven like it the other way or from the other end. */
export interface PageTrial {
  readonly name: string;
  readonly train: string;
  readonly propelled: boolean;
  readonly climbs: boolean;
  /** Whether the scene has it; else it was made for the page. */
  readonly own: boolean;
  readonly standing: Standing;
  /** What comes of it in a sentence. */
  readonly words: string;
  /** Numbers of the marks it has to do with. */
  readonly marks: readonly number[];
}

/** A bad place, numbered from 1 as on the drawings. */
export interface PageMark {
  readonly number: number;
  readonly trackId: string;
  readonly chainage: number;
  readonly place: readonly [x: number, y: number, z: number];
  readonly risk: RiskId;
  readonly standing: Standing;
  readonly title: string;
  readonly headline: string;
  readonly cause: string;
  readonly margin: string;
  readonly cures: readonly string[];
  /** Names of the trials that come to grief there. */
  readonly trials: readonly string[];
}

export interface PageTrack {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  /** From its start to its end, as planned. */
  readonly rise: number;
  readonly grades: readonly GradeLine[];
  /** Steepest place as built. */
  readonly steepest: { readonly chainage: number; readonly grade: number };
  /** Rails as built, along the track. */
  readonly line: readonly TrackPlace[];
}

export interface TrackPlace {
  readonly chainage: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** One helix on one card. */
export interface HelixCard {
  readonly track: string;
  /** Along the track. */
  readonly from: number;
  readonly to: number;
  /** Of the middle of the track. */
  readonly radius: number;
  readonly turns: number;
  readonly rise: number;
  /** Rise of one turn. */
  readonly perTurn: number;
  /** Mean over the helix. */
  readonly grade: number;
  /** Between a rail and the deck over it, where that is least; null where nothing is over it. */
  readonly clear: { readonly height: number; readonly chainage: number } | null;
  readonly tallest: { readonly name: string; readonly height: number } | null;
  readonly longest: { readonly name: string; readonly length: number } | null;
}

/** The rails of a tonnage rating: what the grip of the wheels and the drag of curves are taken as. */
export type RailState = 'clean' | 'average' | 'dirty';
export const railStates: readonly RailState[] = ['clean', 'average', 'dirty'];

export interface Tonnage {
  readonly rows: readonly TonnageRow[];
  /** What is taken for each state of the rails. */
  readonly taken: Readonly<Record<RailState, { readonly adhesion: number; readonly curveDrag: CurveDragChoice }>>;
}

export interface TonnageRow {
  readonly engine: string;
  readonly kind: string;
  readonly track: string;
  /** Greatest number that gets up, −1 where not even the engine does; and their mass, kg. */
  readonly loads: Readonly<
    Record<RailState, { readonly vehicles: number; readonly mass: number; readonly all: boolean }>
  >;
}

/** A vehicle that has to keep off some workings. */
export interface Visitor {
  readonly vehicle: string;
  readonly not: readonly { readonly working: string; readonly why: string; readonly standing: Standing }[];
}

/** A number everything rests on. */
export interface Assumption {
  readonly what: string;
  readonly value: string;
  readonly range: string;
  readonly source: string;
}
