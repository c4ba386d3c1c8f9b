import { describe, expect, it } from 'vitest';
import {
  addTourStop,
  changeTourStop,
  moveTourStop,
  namedStops,
  parseScene,
  putTour,
  removeTourStop,
  removeTrial,
  type Scene,
} from '../../../src/scene/index.ts';
import { sampleScene } from '../sample.ts';

const stops = (scene: Scene): readonly string[] => (scene.tour ?? []).map(({ id }) => id);
const view = { kind: 'whole' } as const;
const three = (): Scene =>
  putTour(sampleScene(), namedStops(['First', 'Second', 'Third'].map((title) => ({ title, view }))));

describe('the stops of a tour', () => {
  it('are named after their titles, and no two alike', () => {
    expect(
      namedStops([
        { title: 'The bend', view },
        { title: 'The bend', view },
        { title: '→', view },
      ]),
    ).toMatchObject([{ id: 'the-bend' }, { id: 'the-bend-2' }, { id: 'stop' }]);
  });

  it('come at the end, or behind another', () => {
    expect(stops(addTourStop(three(), { title: 'More', view }))).toEqual(['first', 'second', 'third', 'more']);
    expect(stops(addTourStop(three(), { title: 'More', view }, 'first'))).toEqual(['first', 'more', 'second', 'third']);
    expect(stops(addTourStop(sampleScene(), { title: 'First', view }))).toEqual(['first']);
    expect(() => addTourStop(three(), { title: 'More', view }, 'fourth')).toThrow('The tour has no stop "fourth".');
  });

  it('are said anew and keep their names', () => {
    const changed = changeTourStop(three(), 'second', { title: 'Otherwise', words: 'Look.', atS: 3, tillS: 5 });
    expect(changed.tour?.[1]).toEqual({ id: 'second', title: 'Otherwise', words: 'Look.', view, atS: 3, tillS: 5 });
    expect(changeTourStop(changed, 'second', { words: undefined }).tour?.[1]).not.toHaveProperty('words');
    expect(parseScene(changed).ok).toBe(true);
  });

  it('stand where a later beginning leaves nothing to play', () => {
    const played = changeTourStop(three(), 'first', { atS: 3, tillS: 5 });
    expect(changeTourStop(played, 'first', { atS: 7 }).tour?.[0]).toEqual({
      id: 'first',
      title: 'First',
      view,
      atS: 7,
    });
    expect(changeTourStop(played, 'first', { atS: 4 }).tour?.[0]).toMatchObject({ tillS: 5 });
  });

  it('change places, and stay at the ends', () => {
    expect(stops(moveTourStop(three(), 'third', -1))).toEqual(['first', 'third', 'second']);
    expect(stops(moveTourStop(three(), 'first', 2))).toEqual(['second', 'third', 'first']);
    const scene = three();
    expect(moveTourStop(scene, 'first', -1)).toBe(scene);
  });

  it('go one by one, and the tour with the last', () => {
    const none = removeTourStop(removeTourStop(removeTourStop(three(), 'second'), 'first'), 'third');
    expect(none).toEqual(sampleScene());
  });

  it('go with the trial that they show', () => {
    const trials = [...sampleScene().trials, { ...sampleScene().trials[0], id: 'again' }];
    const scene = changeTourStop({ ...three(), trials }, 'second', { trial: 'again' });
    expect(stops(removeTrial(scene, 'again'))).toEqual(['first', 'third']);
  });
});
