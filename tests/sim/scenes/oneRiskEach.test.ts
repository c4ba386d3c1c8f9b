import { describe, expect, it } from 'vitest';
import { riskById, risks } from '../../../src/core/risks/index.ts';
import type { RiskId } from '../../../src/core/risks/types.ts';
import type { Scene } from '../../../src/scene/index.ts';
import { riskFiles, riskScene } from '../../scene/sample.ts';
import { patience, solve } from '../solved.ts';

/** Risks that a failure of this one brings along, because they add up more of what it looks at. */
const companions: Partial<Record<RiskId, readonly RiskId[]>> = {
  // Overturning counts every force that tips a vehicle, the couplings' pull among them.
  'string-lining': ['overturning'],
};

/** Everything that the file says of one trial, with names and places in the room left out, by the path of each value. */
function said(scene: Scene, trialId: string): ReadonlyMap<string, unknown> {
  const {
    id: _id,
    name: _name,
    track: trackId,
    train: trainId,
    ...trial
  } = scene.trials.find(({ id }) => id === trialId)!;
  const { id: _track, name: _called, start: _start, ...track } = scene.tracks.find(({ id }) => id === trackId)!;
  const train = scene.trains
    .find(({ id }) => id === trainId)!
    .vehicles.map(({ stock, ...entry }) => {
      const { id: _kind, name: _title, ...vehicle } = scene.stock.find(({ id }) => id === stock)!;
      return { ...vehicle, ...entry };
    });
  const leaves = new Map<string, unknown>();
  const walk = (value: unknown, path: string): void => {
    if (typeof value !== 'object' || value === null) leaves.set(path, value);
    else for (const [key, inner] of Object.entries(value)) walk(inner, `${path}.${key}`);
  };
  walk({ trial, track, train }, '');
  return leaves;
}

/**
 * What "just" means besides the distance that a risk calls near: no trial is further from its limit than this share of it (a bound of our own).
 */
const justShare = 0.1;

it('every risk has a scene of its own, and no other', () => {
  expect(riskFiles.map((name) => name.replace('.json', ''))).toEqual(risks.map(({ id }) => id).sort());
});

describe.each(riskFiles)('%s', { timeout: patience }, (name) => {
  const scene = riskScene(name);
  const risk = name.replace('.json', '') as RiskId;

  it('has two trials that differ in one number', () => {
    expect(scene.trials.map(({ id }) => id)).toEqual(['fails', 'passes']);
    const [failing, passing] = scene.trials.map(({ id }) => said(scene, id));
    const differing = [...new Set([...failing.keys(), ...passing.keys()])].filter(
      (path) => failing.get(path) !== passing.get(path),
    );
    expect(differing).toHaveLength(1);
    expect(typeof failing.get(differing[0])).toBe('number');
    expect(typeof passing.get(differing[0])).toBe('number');
  });

  it('just fails by that risk, and just passes by it: the margin is within what is called near on either side', async () => {
    const { near } = riskById(risk);
    const failing = await solve(scene, 'fails');
    expect(failing.failing.filter((one) => !companions[risk]?.includes(one))).toEqual([risk]);
    const short = failing.worst(risk).margin;
    expect(short).toBeLessThan(0);
    expect(short).toBeGreaterThan(-near);
    const passing = await solve(scene, 'passes');
    expect(passing.failing).toEqual([]);
    expect(passing.run.outcome).toBe('arrived');
    const spare = passing.worst(risk).margin;
    expect(spare).toBeGreaterThan(0);
    expect(spare).toBeLessThan(near);
  });
});

it('fails and passes by a tenth of the limit at most, every risk of the registry in one table', {
  timeout: patience,
}, async () => {
  const table: { risk: RiskId; failing: number; passing: number }[] = [];
  for (const { id } of risks) {
    const scene = riskScene(`${id}.json`);
    const shares = [];
    for (const trial of ['fails', 'passes']) {
      const { value, limit } = (await solve(scene, trial)).worst(id);
      shares.push((limit - value) / limit);
    }
    table.push({ risk: id, failing: shares[0], passing: shares[1] });
  }
  expect(table.map(({ risk }) => risk)).toEqual(risks.map(({ id }) => id));
  expect(table.filter(({ failing, passing }) => !(failing < 0 && passing > 0))).toEqual([]);
  expect(table.filter(({ failing, passing }) => !(failing > -justShare && passing < justShare))).toEqual([]);
});
