import type { Probe, Takes, TrialMeasure } from '../types.ts';
import type { MeasureUnit } from './units.ts';

export type MeasureId =
  | 'draft'
  | 'buff'
  | 'drawbar'
  | 'work'
  | 'time'
  | 'least-speed'
  | 'foot-speed'
  | 'end-throw'
  | 'centre-throw'
  | 'length'
  | 'deck'
  | 'room-width'
  | 'room-depth'
  | 'room-area'
  | 'rise'
  | 'steepest'
  | 'ruling'
  | 'tightest'
  | 'vertical-radius'
  | 'headroom';

/** Something a railway comes to beside its margins: a number with a unit and a better side. */
export interface Measure {
  readonly id: MeasureId;
  /** Its name in reports, without the unit that ends it. */
  readonly field: string;
  readonly title: string;
  readonly about: string;
  readonly unit: MeasureUnit;
  readonly better: 'less' | 'more';
  /** Of the run of its trials, or of what its tracks take. */
  readonly of: 'run' | 'track';
  /** What a railway comes to, SI; Infinity where it has no bound; null where there is nothing to say. */
  readonly value: (probe: Probe) => number | null;
}

type Told = Omit<Measure, 'value' | 'of'>;

/** The greatest, or the least, over the trials; null where none has it. */
const ofTrials = (most: boolean, of: (trial: TrialMeasure) => number | null, told: Told): Measure => ({
  ...told,
  of: 'run',
  value: (probe) => {
    const all = probe.ok ? probe.trials.flatMap((trial) => of(trial) ?? []) : [];
    if (all.length === 0) return null;
    return most ? Math.max(...all) : Math.min(...all);
  },
});

const ofTracks = (of: (takes: Takes) => number | null, told: Told): Measure => ({
  ...told,
  of: 'track',
  value: ({ takes }) => (takes ? of(takes) : null),
});

/** Every measure there is, in the order they are told in: table, sweep, map, reports and command line go through this. */
export const measures: readonly Measure[] = [
  ofTrials(true, ({ greatestDraft }) => greatestDraft, {
    id: 'draft',
    field: 'greatestDraft',
    title: 'Greatest draft',
    about: 'Greatest pull on any joint of any trial',
    unit: 'force',
    better: 'less',
  }),
  ofTrials(true, ({ greatestBuff }) => greatestBuff, {
    id: 'buff',
    field: 'greatestBuff',
    title: 'Greatest buff',
    about: 'Greatest push on any joint of any trial',
    unit: 'force',
    better: 'less',
  }),
  ofTrials(true, ({ drawbar }) => drawbar, {
    id: 'drawbar',
    field: 'drawbarPull',
    title: 'Drawbar pull',
    about: 'Greatest force between an engine and what it moves, pulled or pushed',
    unit: 'force',
    better: 'less',
  }),
  ofTrials(true, ({ work }) => work, {
    id: 'work',
    field: 'work',
    title: 'Work of the engines',
    about: 'Work that the engines do at the rail, of the trial that takes most',
    unit: 'work',
    better: 'less',
  }),
  ofTrials(
    true,
    // A train that does not arrive takes longer than any limit.
    ({ outcome, duration }) => (outcome === 'arrived' ? duration : Number.POSITIVE_INFINITY),
    {
      id: 'time',
      field: 'time',
      title: 'Time to arrive',
      about: 'Time from start to finish, of the trial that takes longest',
      unit: 'time',
      better: 'less',
    },
  ),
  ofTrials(false, ({ leastSpeed }) => leastSpeed, {
    id: 'least-speed',
    field: 'leastSpeed',
    title: 'Least speed',
    about: 'Least speed once the train has gone its own length',
    unit: 'speed',
    better: 'more',
  }),
  ofTrials(true, ({ footSpeed }) => footSpeed, {
    id: 'foot-speed',
    field: 'footSpeed',
    title: 'Speed at the foot',
    about: 'Greatest speed where the head of the train is lowest; absent where it begins there',
    unit: 'speed',
    better: 'less',
  }),
  ofTrials(true, ({ endThrow }) => endThrow, {
    id: 'end-throw',
    field: 'endThrow',
    title: 'End throw',
    about: 'Farthest that the end of a body stands off the track, on its middle line',
    unit: 'length',
    better: 'less',
  }),
  ofTrials(true, ({ centreThrow }) => centreThrow, {
    id: 'centre-throw',
    field: 'centreThrow',
    title: 'Centre throw',
    about: 'Farthest that a body stands off the track between its running points, on its middle line',
    unit: 'length',
    better: 'less',
  }),
  ofTracks(({ length }) => length, {
    id: 'length',
    field: 'strip',
    title: 'Strip',
    about: 'Length of all tracks that the trials run over, along the centreline in plan',
    unit: 'length',
    better: 'less',
  }),
  ofTracks(({ deck }) => deck, {
    id: 'deck',
    field: 'deck',
    title: 'Deck to cut',
    about: 'Length of the tracks times the width of the deck',
    unit: 'area',
    better: 'less',
  }),
  ofTracks(({ width }) => width, {
    id: 'room-width',
    field: 'roomWidth',
    title: 'Room, width',
    about: 'Longer side of the smallest upright rectangle that holds the centrelines',
    unit: 'length',
    better: 'less',
  }),
  ofTracks(({ depth }) => depth, {
    id: 'room-depth',
    field: 'roomDepth',
    title: 'Room, depth',
    about: 'Shorter side of the smallest upright rectangle that holds the centrelines',
    unit: 'length',
    better: 'less',
  }),
  ofTracks(({ width, depth }) => width * depth, {
    id: 'room-area',
    field: 'roomArea',
    title: 'Room, area',
    about: 'Area of the smallest upright rectangle that holds the centrelines',
    unit: 'area',
    better: 'less',
  }),
  ofTracks(({ rise }) => rise, {
    id: 'rise',
    field: 'rise',
    title: 'Rise',
    about: 'From the lowest to the highest rail top',
    unit: 'length',
    better: 'more',
  }),
  ofTracks(({ steepest }) => steepest, {
    id: 'steepest',
    field: 'steepest',
    title: 'Steepest grade',
    about: 'Steepest grade as built',
    unit: 'grade',
    better: 'less',
  }),
  ofTracks(({ ruling }) => ruling, {
    id: 'ruling',
    field: 'ruling',
    title: 'Ruling grade',
    about: 'Steepest grade as built with what the curve there is worth added, 813 over the radius in mm and per cent',
    unit: 'grade',
    better: 'less',
  }),
  ofTracks(({ tightest }) => tightest, {
    id: 'tightest',
    field: 'tightestRadius',
    title: 'Tightest radius',
    about: 'Tightest radius in plan; absent where all is straight',
    unit: 'length',
    better: 'more',
  }),
  ofTracks(({ sharpest }) => sharpest, {
    id: 'vertical-radius',
    field: 'sharpestVerticalRadius',
    title: 'Vertical radius',
    about: 'Sharpest vertical curve; absent where grades are even',
    unit: 'length',
    better: 'more',
  }),
  ofTracks(({ headroom }) => headroom, {
    id: 'headroom',
    field: 'headroom',
    title: 'Headroom',
    about: 'Least height between a rail and the deck over it; absent where nothing passes over',
    unit: 'length',
    better: 'more',
  }),
];

/** A measure by its id. */
export const measureById = (id: MeasureId): Measure => measures.find((one) => one.id === id) as Measure;
