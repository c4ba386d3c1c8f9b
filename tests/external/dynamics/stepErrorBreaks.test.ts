import { describe, expect, it } from 'vitest';
import { halvings, order, rolling, runFor, spring, trainsOn } from '../../core/dynamics/stepErrors.ts';
import { engine, level, wagon } from '../../core/dynamics/trains.ts';

/*
 * Error of the time step where something sticks, breaks away or touches within it, against closed forms of textbook mechanics. Where within its
 * step that falls is chance: each step size is tried at many phases, and the worst counts.
 */
const g = 9.80665;

describe('sticking: friction acts on the speed at the step’s end, so what falls inside a step is laid to its end', () => {
  it('a train coasts to rest after v/cg and v²/2cg: a step late at most, and within c·g·h²/8 of the place', () => {
    // In the last step the exact train runs for u/cg of it and rests, the solver’s runs evenly from u to 0 all through it: u/2·(h - u/cg) further,
    // at most c·g·h²/8, at u = c·g·h/2.
    const a = 0.015 * g;
    const on = trainsOn(
      level(4),
      [0.1, 0.3, 0.05].map((mass) => wagon(mass)),
    );
    for (const step of [0.004, 0.0017, 0.001, 0.00031]) {
      for (const v of [0.31, 0.5, 0.377]) {
        on(step, { speeds: [v, v, v] }, (chain) => {
          const start = [0, 1, 2].map(chain.sigma);
          let steps = 0;
          for (; chain.speed(0) !== 0; steps++) chain.advance(1);
          const late = steps * step - v / a;
          expect(late).toBeGreaterThan(-1e-9);
          expect(late).toBeLessThan(step * (1 + 1e-6));
          for (const i of [0, 1, 2]) {
            expect(chain.speed(i)).toBe(0);
            const over = chain.sigma(i) - start[i]! - (v * v) / (2 * a);
            expect(over).toBeGreaterThan(-1e-10);
            expect(over).toBeLessThan((a * step * step) / 8 + 1e-10);
          }
          // Friction took all there was, the last step included.
          expect(chain.losses().rolling / (0.5 * 0.45 * v * v)).toBeCloseTo(1, 10);
        });
      }
    }
  });

  it('a wagon that turns back on a grade errs by 2·c·g·h·(s - c)/(s + c) of speed at most, which is first order', () => {
    // s and c the shares of weight of grade and friction. It turns after t of a step: either the step ends at rest, or friction is laid
    // upwards all through it. Both err most where one becomes the other, at t = h·(s - c)/(s + c).
    const grade = 0.03;
    const pitch = Math.atan(grade);
    const [s, c] = [Math.sin(pitch), 0.015 * Math.cos(pitch)];
    const on = trainsOn(level(3, grade), [wagon(0.1)]);
    for (const step of halvings(0.008, 3)) {
      let worst = 0;
      for (let phase = 0; phase < 16; phase++) {
        const v = 0.3 + 0.0019 * phase;
        const exact = -g * (s - c) * (1.2 - v / (g * (s + c)));
        const found = on(step, { speeds: [v] }, (chain) => runFor(chain, step, 1.2).speed(0));
        worst = Math.max(worst, Math.abs(found - exact));
      }
      const bound = (2 * c * g * step * (s - c)) / (s + c);
      expect(worst).toBeLessThan(bound * (1 + 1e-6));
      // And the bound is what really comes, not a wide one.
      expect(worst).toBeGreaterThan(0.7 * bound);
    }
  });

  it('a wagon on a spring with dry friction comes to rest where half swings about ±μN/k leave it, second order on the whole', () => {
    // Any textbook on vibrations: each half swing is a cosine about the shifted middle, the turn falls by 2·μN/k each time. Friction turns
    // where the speed is nothing, so a wrong share of a step costs only its square. Each case has its own phase in the step: the worst of twelve.
    const [k, mass, coulomb] = [200, 0.1, 0.05];
    const shift = (coulomb * mass * g) / k;
    const omega = Math.sqrt(k / mass);
    const on = trainsOn(level(3), [wagon(5, spring(k), rolling(0.5)), wagon(mass, spring(k), rolling(coulomb))]);
    const worst = (step: number) => {
      let most = 0;
      for (let phase = 0; phase < 12; phase++) {
        const v = 0.12 + 0.0027 * phase;
        let place = Math.hypot(shift, v / omega) - shift;
        for (; Math.abs(place) > shift; place = -Math.sign(place) * (Math.abs(place) - 2 * shift));
        on(step, { speeds: [0, -v] }, (chain) => {
          const start = chain.sigma(1);
          runFor(chain, step, 1.6);
          expect(chain.speed(0)).toBe(0);
          expect(chain.speed(1)).toBe(0);
          most = Math.max(most, Math.abs(start - chain.sigma(1) - place));
        });
      }
      return most / shift;
    };
    const errors = halvings(0.004, 4).map(worst);
    expect(order(errors[0]!, errors[4]!) / 4).toBeGreaterThan(1.8);
    // At 1 ms: within a hundredth of the half-width in which it may rest.
    expect(errors[2]).toBeLessThan(0.01);
  });

  it('an engine that breaks away against more than running friction errs by the jump of force times a step: first order', () => {
    // The setting grows evenly; it starts where the motor gives the breakaway force, exact in time; then M·v′ = A·t - D - v·line. Starting a share of
    // a step late is a lack of speed of (1.5 D - D)/M times that share, which fades with the motor.
    const [drag, mass, line, time] = [0.05 * 0.4 * g, 0.8, 1.2 / 0.6, 0.8];
    const worst = (breakaway: number) => {
      const on = trainsOn(level(2), [
        engine(0.4, { rotatingMass: 0.4, adhesion: 0.9 }, {}, rolling(0.05, 0, breakaway)),
      ]);
      return (step: number) => {
        let error = 0;
        for (let phase = 0; phase < 12; phase++) {
          const ramp = 2 + 0.0137 * phase;
          const found = on(step, {}, (chain) => {
            chain.engines[0]!.turn(0, 1, 0, ramp);
            return runFor(chain, step, time).speed(0);
          });
          const rate = 1.2 / ramp;
          const steady = (t: number) => (rate * t - drag) / line - (rate * mass) / (line * line);
          const start = (breakaway * drag) / rate;
          const fading = Math.exp((-(time - start) * line) / mass);
          error = Math.max(error, Math.abs(found - steady(time) + steady(start) * fading) / fading);
        }
        return error;
      };
    };
    const jumping = halvings(0.008, 4).map(worst(1.5));
    jumping.forEach((error, i) => {
      expect(error).toBeLessThan((0.5 * drag * halvings(0.008, 4)[i]!) / mass);
    });
    expect(Math.abs(order(jumping[0]!, jumping[4]!) / 4 - 1)).toBeLessThan(0.1);
    // Without a jump nothing is lost at the start: second order, though each step size meets the start at phases of its own.
    const even = halvings(0.008, 4).map(worst(1));
    expect(Math.abs(order(even[0]!, even[4]!) / 4 - 2)).toBeLessThan(0.1);
  });
});

describe('touching: slack closes and the blow is met inside a step', () => {
  // Two bodies on the way to each other, a spring and a damper between them once the slack is closed: with β = c/2m*, ω² = k/m* - β² the force is
  // e^(-βt)·(f₀·cos ωt + B·sin ωt), f₀ = c·v, B = (v·(k - 2βc) + β·f₀)/ω, greatest where its slope is nothing. Any textbook.
  const masses = [0.12, 0.3] as const;
  const reduced = (masses[0] * masses[1]) / (masses[0] + masses[1]);
  const v = 0.4;
  const blow = (k: number, c: number) => {
    const beta = c / (2 * reduced);
    const omega = Math.sqrt(k / reduced - beta * beta);
    const first = c * v;
    const slope = v * (k - 2 * beta * c);
    const sine = (slope + beta * first) / omega;
    const time = Math.atan2(slope, beta * sine + omega * first) / omega;
    const force = Math.exp(-beta * time) * (first * Math.cos(omega * time) + sine * Math.sin(omega * time));
    return { time, force };
  };
  /** Peak force of a blow, N, and its moment after the touch, s: twelve blows that touch at as many moments within 4 ms. */
  const peaksAt = (k: number, c: number) => {
    const on = trainsOn(
      level(2),
      masses.map((mass) => wagon(mass, spring(k, c, 0.1), rolling(0))),
      1.2,
    );
    return (step: number) =>
      Array.from({ length: 12 }, (_, phase) => {
        const gap = 0.003 + (v * 0.004 * (phase + 0.37)) / 12;
        return on(step, { speeds: [0, v], gaps: [gap - 0.05] }, (chain) => {
          let force = 0;
          let time = 0;
          for (let i = 0; i < Math.ceil(0.04 / step); i++) {
            chain.advance(1);
            if (-chain.force(0) <= force) continue;
            force = -chain.force(0);
            time = (i + 0.5) * step - gap / v;
          }
          return { force, time };
        });
      });
  };

  it.each([
    [4000, 1.6],
    [4000, 12],
    [2000, 0],
    [400, 2],
  ])('k %f N/m, c %f N·s/m: peak short by (ωh)²/4 at most, its moment within half a step, second order', (k, c) => {
    // A peak is the greatest mean over a step: the swing at its two ends, halved, which at worst are the top and one step beside it.
    const exact = blow(k, c);
    const omega = Math.sqrt(k / reduced);
    const peaks = peaksAt(k, c);
    const steps = halvings(0.001, 3);
    const short = steps.map((step) => {
      const errors = peaks(step).map(({ force, time }) => {
        // What the touch itself is off by may go either way.
        expect(force / exact.force - 1).toBeLessThan((omega * step) ** 2 / 24);
        expect(Math.abs(time - exact.time)).toBeLessThan(0.55 * step);
        return 1 - force / exact.force;
      });
      return Math.max(...errors);
    });
    short.forEach((error, i) => {
      expect(error).toBeLessThan((omega * steps[i]!) ** 2 / 4);
    });
    expect(order(short[0]!, short[3]!) / 3).toBeGreaterThan(1.8);
  });

  it.each([
    [3900, 1.6],
    [2000, 0],
    [400, 2],
  ])(
    'k %f N/m, c %f N·s/m: halving 1 ms changes the peak by less than a hundredth, as wherever a swing takes 29 ms or longer',
    (k, c) => {
      // (ωh)²/4 at worst before, (ωh/2)²/8 at best after: that is 1 % at ωh = 0.214. What swings faster needs a finer step for it.
      expect(2 * Math.PI * Math.sqrt(reduced / k)).toBeGreaterThan(0.029);
      const peaks = peaksAt(k, c);
      const fine = peaks(0.0005);
      peaks(0.001).forEach(({ force }, phase) => {
        expect(Math.abs(force / fine[phase]!.force - 1)).toBeLessThan(0.01);
      });
    },
  );
});
