import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  jointNumber,
  jointVehicles,
  type Naming,
  vehicleName,
  vehicleNumber,
} from '../../../../src/core/findings/index.ts';
import { pairName } from '../../../../src/core/findings/words/naming.ts';

/** A train as its scene lists it, and the same train with its last vehicle ahead. */
const listed = ['Engine', 'Wagon', 'Wagon', 'Long van', 'Wagon', 'Brake van'];
const pulled: Naming = { vehicleNames: listed, propelled: false };
const propelled: Naming = { vehicleNames: listed.toReversed(), propelled: true, lastLeads: true };

describe('numbers of vehicles and joints', () => {
  it('are the scene’s: the coupling behind the engine is joint 1 pulled and propelled', () => {
    expect(jointNumber(pulled, 0)).toBe(1);
    expect(jointNumber(propelled, 4)).toBe(1);
    expect(jointVehicles(pulled, 0)).toEqual(['Engine', 'Wagon 2']);
    expect(jointVehicles(propelled, 4)).toEqual(['Engine', 'Wagon 2']);
  });

  it('name every vehicle and every pair alike whichever end leads', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('A', 'B', 'C'), { minLength: 2, maxLength: 12 }), (names) => {
        const ahead: Naming = { vehicleNames: names };
        const behind: Naming = { vehicleNames: names.toReversed(), lastLeads: true };
        const last = names.length - 1;
        for (let i = 0; i <= last; i++) {
          expect(vehicleNumber(behind, last - i)).toBe(vehicleNumber(ahead, i));
          expect(vehicleName(behind, last - i)).toBe(vehicleName(ahead, i));
        }
        for (let joint = 0; joint < last; joint++) {
          expect(jointNumber(behind, last - 1 - joint)).toBe(joint + 1);
          expect(pairName(behind, last - 1 - joint)).toBe(pairName(ahead, joint));
        }
      }),
    );
  });

  it('say a pair of a kind short', () => {
    expect(pairName(propelled, 3)).toBe('Wagon 2 and 3');
    expect(pairName(propelled, 2)).toBe('Wagon 3 and Long van');
  });
});
