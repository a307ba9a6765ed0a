/**
 * Running in reverse: the same engine seen in a mirror. What stays as it is obeys the same equations with angle and speed
 * of the other sign; what can be set over, or is alike both ways, runs as it does forward.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { mirrored } from '../../src/parts/valve-gears/mirrored.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import type { RunResult } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { context, samplesOf } from '../contracts/context.ts';
import { arbitraryEngine } from '../support/arbitrary-engine.ts';
import { chosen } from '../support/chosen.ts';
import { systemOf } from '../support/drive.ts';
import { DEGREE, discGear, growingLoad, inertia, referenceSpec, RPM } from '../support/reference-engine.ts';

type Gear = EngineSpec['valve_gear'];

const reversed = (spec: EngineSpec): EngineSpec => ({ ...spec, running_direction: 'reverse' });

const slideValve = (eccentric: 'fixed' | 'slip'): Gear =>
  chosen(valveGears, 'flat slide valve', {
    travel: 10e-3,
    steam_lap: 2.2e-3,
    lead: 0.3e-3,
    port_width: 2.5e-3,
    bar_width: 4e-3,
    port_length: 16e-3,
    cavity_length: 15e-3,
    rim_width: 3e-3,
    face_gap: 5e-6,
    friction_coefficient: 0.1,
    eccentric,
  });

const rocking = (admission: number, exhaust: number): Gear =>
  chosen(valveGears, 'oscillating cylinder', {
    port_diameter: 7e-3,
    hole_circle_radius: 32e-3,
    face_diameter: 0.1,
    pivot_diameter: 8e-3,
    face_gap: 6e-6,
    face_force: 150,
    reversing_tap: 'fitted',
    admission: { hole_diameter: admission, angle: 13 * DEGREE },
    exhaust: { hole_diameter: exhaust, angle: 13.5 * DEGREE },
  });

const ballValve = chosen(valveGears, 'piston-lifted valve', {
  seat_diameter: 8e-3,
  valve_diameter: 11e-3,
  pin_diameter: 3e-3,
  lift: 4e-3,
  exhaust: { hole_count: 8, hole_diameter: 6e-3, edge_from_top: 50e-3 },
});

/** Everything of a run but what the engine is called and described by. */
const figuresOf = ({ outcome, settled, trace, ledger }: RunResult) => ({ outcome, settled, trace, ledger });

describe('a gear that serves both ways runs the same to the last bit', () => {
  it.each<[string, EngineSpec]>([
    ['a slide valve on a slip eccentric', referenceSpec({ valve_gear: slideValve('slip') })],
    [
      'a ball lifted by the piston',
      referenceSpec({
        cylinder: { clearance: 0.6 },
        supply: { pressure: 6e5 },
        valve_gear: ballValve,
        start: { crank_angle: 200 * DEGREE, hand_speed: 500 * RPM },
        run: { longest_time: 1 },
      }),
    ],
  ])('%s', (_name, spec) => {
    const forward = runEngine(spec);
    expect(forward.outcome.turns).toBeGreaterThan(3);
    expect(figuresOf(runEngine(reversed(spec)))).toEqual(figuresOf(forward));
  });
});

describe('an oscillating cylinder with a reversing tap', () => {
  it('runs in reverse as with its holes exchanged', () => {
    const settled = (valve_gear: Gear): RunResult =>
      runEngine(referenceSpec({ valve_gear, cylinder: { rod_length: 0.12 } }));
    const astern = runEngine(
      reversed(referenceSpec({ valve_gear: rocking(7e-3, 8e-3), cylinder: { rod_length: 0.12 } })),
    );
    const exchanged = chosen(valveGears, 'oscillating cylinder', {
      ...rocking(7e-3, 8e-3).values,
      admission: { hole_diameter: 8e-3, angle: 13.5 * DEGREE },
      exhaust: { hole_diameter: 7e-3, angle: 13 * DEGREE },
    });
    expect(astern.outcome.kind).toBe('settled');
    expect(figuresOf(astern)).toEqual(figuresOf(settled(exchanged)));
    expect(astern.settled!.speed).not.toBe(settled(rocking(7e-3, 8e-3)).settled!.speed);
  });
});

describe('a disc whose plates turn to a second stop', () => {
  const forward = systemOf(referenceSpec({ valve_gear: discGear() })).engine.ends[0].valveGear.events;
  // So far that the admission opens as long before dead centre as it does forward.
  const turn = forward.admission - 2 * Math.PI + forward.cutOff;
  const light = { load: growingLoad(0.3, 0.0025), flywheel: inertia(0.05), cylinder: { clearance: 0.3 } };
  const disc = (reverse_turn?: number): EngineSpec =>
    referenceSpec({
      ...light,
      valve_gear: chosen(valveGears, 'rotary disc', { ...discGear().values, reverse_turn }),
    });
  const spec = reversed(disc(turn));

  it('admits as it does forward, and exhausts where the mirror puts it', () => {
    const { events } = systemOf(spec).engine.ends[0].valveGear;
    expect(events.admission).toBeCloseTo(forward.admission, 12);
    expect(events.cutOff).toBeCloseTo(forward.cutOff, 12);
    expect(events.release).toBeCloseTo(2 * Math.PI - forward.compression + turn, 12);
    expect(events.compression).toBeCloseTo(2 * Math.PI - forward.release + turn, 12);
  });

  it('runs in reverse, which it does not with its plates left', () => {
    const ahead = runEngine(disc()).settled!;
    const astern = runEngine(spec).settled!;
    // The exhaust, mirrored, opens half-way down and squeezes what it has shut in from half-way up.
    expect(astern.work.indicated).toBeLessThan(0.9 * ahead.work.indicated);
    expect(astern.speed).toBeLessThan(ahead.speed);
    expect(runEngine(reversed(disc())).outcome.kind).toBe('no-start');
  });
});

describe('a gear that is left as it is', () => {
  it('obeys the same equations, angle and speed with the other sign', () => {
    const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const states = fc.record({
      angle: real(-7, 7),
      speed: real(-100, 100),
      factors: fc.array(real(0.5, 6), { minLength: 5, maxLength: 5 }),
    });
    const stays = (system: EngineSystem): boolean => system.engine.ends[0].valveGear.reverse === undefined;
    let tried = 0;
    const mirror = fc.property(arbitraryEngine({ longestTime: 1, strays: 0 }), states, (spec, state) => {
      const there = systemOf({ ...spec, running_direction: 'forward' });
      if (!stays(there)) return;
      tried += 1;
      const back = systemOf(reversed(spec));
      const slopesAt = (system: EngineSystem, sign: 1 | -1): Float64Array => {
        const y = initialState(system, sign * state.angle, sign * state.speed);
        for (let slot = system.slots.mass(0); slot < system.slots.firstTotal; slot += 1)
          y[slot]! *= state.factors[slot % 5]!;
        const slopes = new Float64Array(system.dimension);
        system.timeSlopes(state.speed < 0 === sign < 0 ? 1 : -1, y, slopes);
        slopes[SLOT.crankAngle]! *= sign;
        slopes[SLOT.speed]! *= sign;
        return slopes;
      };
      const forward = slopesAt(there, -1);
      for (const [i, slope] of slopesAt(back, 1).entries())
        expect(Math.abs(slope - forward[i]!)).toBeLessThanOrEqual(1e-6 * Math.abs(slope) + 1e-9);
    });
    fc.assert(mirror, { numRuns: 60, seed: 3 });
    expect(tried).toBeGreaterThan(20);
  });

  it('is itself again in a mirror of the mirror', () => {
    for (const kind of valveGears.kinds) {
      for (const choice of samplesOf(kind, 3, 0)) {
        const gear = choice.build(context);
        const twice = mirrored(mirrored(gear));
        for (const [k, port] of gear.ports.entries())
          for (const angle of [0.1, 1, 2.5, 4, 6])
            expect(twice.ports[k]!.effectiveArea(angle, 30)).toBe(port.effectiveArea(angle, 30));
        for (const [i, edge] of twice.edges.entries()) expect(edge).toBeCloseTo(gear.edges[i]!, 12);
        expect(twice.events.release).toBeCloseTo(gear.events.release, 12);
      }
    }
  });
});
