/** A slide valve that the chest presses on its face: it holds an engine back at rest and running, and the books close. */
import { describe, expect, it } from 'vitest';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import type { SlideValve } from '../../src/parts/valve-gears/slide-valve.ts';
import { angleOfAdvance, displacementLaw } from '../../src/parts/valve-gears/slide-valve.ts';
import { meanFilmPressure } from '../../src/parts/valve-gears/face-push.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { chosen } from '../support/chosen.ts';
import { constantLoad, DEGREE, referenceSpec } from '../support/reference-engine.ts';

const valve: SlideValve = {
  eccentricity: 5e-3,
  steamLap: 1.6e-3,
  exhaustLap: 0.2e-3,
  lead: 0.3e-3,
  portWidth: 2.5e-3,
  barWidth: 5e-3,
};

const pressed = (friction_coefficient: number): EngineSpec['valve_gear'] =>
  chosen(valveGears, 'flat slide valve', {
    travel: 2 * valve.eccentricity,
    steam_lap: valve.steamLap,
    exhaust_lap: valve.exhaustLap,
    lead: valve.lead,
    port_width: valve.portWidth,
    bar_width: valve.barWidth,
    port_length: 16e-3,
    cavity_length: 18e-3,
    rim_width: 3e-3,
    face_gap: 0,
    friction_coefficient,
  });

const running = (friction: number) => runEngine(referenceSpec({ valve_gear: pressed(friction) }));

describe('running', () => {
  const free = running(0);
  const rubbing = running(0.15);

  it('it takes work in proportion, and the speed falls', () => {
    expect(free.settled!.work.valveGear).toBe(0);
    const { work, speed } = rubbing.settled!;
    // Half the chest's gauge pressure on the whole valve and no relief would be too little, all of it too much.
    const travelled = 2 * 2 * valve.eccentricity;
    const whole = 3e5 * (18e-3 + 4.3e-3 + 6e-3) * (16e-3 + 6e-3);
    expect(work.valveGear / (0.15 * whole * travelled)).toBeGreaterThan(0.5);
    expect(work.valveGear / (0.15 * whole * travelled)).toBeLessThan(1);
    expect(speed).toBeLessThan(free.settled!.speed);
  });

  it('its books close', () => {
    expect(rubbing.ledger.mass).toBeLessThan(1e-9);
    expect(rubbing.ledger.energy).toBeLessThan(1e-6);
    const { indicated, bearings, piston, valveGear, load, kineticGain } = rubbing.settled!.work;
    expect(Math.abs(indicated - bearings - piston - valveGear - load - kineticGain)).toBeLessThan(
      1e-5 * indicated,
    );
  });
});

describe('at rest', () => {
  it('it holds with its friction on the lever of the eccentric, under the air that has come', () => {
    // Tight and too heavily loaded to move; the port stands open to the chest, and the cylinder fills.
    const degrees = 40;
    const missing = (friction: number): number =>
      runEngine(
        referenceSpec({
          valve_gear: pressed(friction),
          leaks: [],
          load: constantLoad(60),
          start: { crank_angle: degrees * DEGREE },
          run: { longest_time: 20 },
        }),
      ).outcome.missingTorque!;
    const chest = 401_325;
    const room = 101_325;
    const s = displacementLaw(valve)(degrees * DEGREE);
    expect(s - valve.steamLap).toBeGreaterThan(valve.portWidth);
    const lands = (1.6e-3 + 0.2e-3) * 16e-3 + 3e-3 * (2 * 18e-3 + 16e-3);
    const force = (chest - room) * 18e-3 * 16e-3 + (chest - meanFilmPressure(chest, room)) * lands;
    const lever = valve.eccentricity * Math.cos(degrees * DEGREE + angleOfAdvance(valve));
    const held = missing(0.2) - missing(0);
    // The chest counts as full within a per cent.
    expect(held / (0.2 * force * Math.abs(lever))).toBeCloseTo(1, 2);
  });
});
