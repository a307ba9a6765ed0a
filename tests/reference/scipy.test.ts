/**
 * One whole engine against an independent reckoning: tests/reference/engine.py, SciPy with LSODA, written from the
 * documents. Settled speed, air use and indicated work agree within 0.2 %; what is left is mostly the rounding of the
 * flow laws at equal pressures, which the reference does not have.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { readScenario, runEngine, type EngineSpec } from '../../src/index.ts';
import { crankAngle } from '../../src/parts/crank-positions.ts';
import { crankTrain } from '../../src/parts/cylinder.ts';
import type { Clearance } from '../../src/kinds/parameter.ts';
import { clearanceOf } from '../../src/parts/fits/clearance.ts';
import {
  spoolOf,
  type CamSpools,
  type SpoolName,
} from '../../src/parts/valve-gears/cam-spools-parameters.ts';
import { partContext } from '../../src/parts/engine-description.ts';

const path = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

function pressEngine(): EngineSpec {
  const file = path('../../scenarios/cider-press.yaml');
  const reading = readScenario(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error('the demo scenario cannot be read');
  return reading.spec;
}

function spoolNumbers(spec: EngineSpec, name: SpoolName) {
  const gear = spec.valve_gear.values as unknown as CamSpools;
  const own = gear[name];
  const crank = crankTrain(spec.cylinder);
  return {
    ...own,
    clearance: spoolOf(gear, name).radialClearance,
    lift_full: own.lift,
    // The reference has a method called lift.
    lift: undefined,
    opens: crankAngle(crank, own.opens),
    closes: crankAngle(crank, own.closes),
  };
}

function numbersOf(spec: EngineSpec, guessSpeed: number) {
  const { cylinder, supply, atmosphere, friction } = spec;
  const piston = spec.leaks[0]?.values as { clearance: Clearance; length: number };
  const gear = spec.valve_gear.values as unknown as CamSpools;
  return {
    room_pressure: atmosphere.pressure,
    room_temperature: atmosphere.temperature,
    supply_pressure: supply.pressure,
    supply_temperature: supply.temperature ?? atmosphere.temperature,
    bore: cylinder.bore,
    stroke: cylinder.stroke,
    rod_length: cylinder.rod_length,
    clearance: cylinder.clearance,
    reciprocating_mass: cylinder.reciprocating_mass,
    wall_coefficient: cylinder.wall_heat.values['coefficient'],
    chest_volume: supply.chest_volume,
    hose_bore: supply.hose.bore,
    hose_length: supply.hose.length,
    discharge: gear.discharge_coefficient,
    drive_torque: gear.drive_torque,
    admission: spoolNumbers(spec, 'admission'),
    exhaust: spoolNumbers(spec, 'exhaust'),
    piston_gap: clearanceOf(cylinder.bore, piston.clearance).mean,
    piston_land: piston.length,
    friction: {
      running: friction.running_torque,
      breakaway: friction.breakaway_torque,
      stribeck: friction.stribeck_speed,
      viscous: friction.viscous_torque,
      piston: friction.piston_force,
      piston_pressure: friction.piston_force_per_pressure,
    },
    load_constant: 1.1,
    load_per_rpm: 0.0025,
    inertia: spec.flywheel.build(partContext(spec)).momentOfInertia,
    guess_speed: guessSpeed,
  };
}

it('agrees with SciPy on the cider press', { timeout: 240_000 }, () => {
  const spec = pressEngine();
  const settled = runEngine(spec).settled!;
  // Deliberately off: the reference finds its own root.
  const input = JSON.stringify(numbersOf(spec, 1.03 * settled.speed));
  const said = spawnSync('/usr/bin/python3', [path('engine.py')], { input, encoding: 'utf8' });
  expect(said.stderr).toBe('');
  const reference = JSON.parse(said.stdout) as Record<string, number>;
  const off = (ours: number, theirs: number | undefined): number => Math.abs(ours / (theirs ?? NaN) - 1);
  expect(off(settled.speed, reference['speed'])).toBeLessThan(2e-3);
  expect(off(settled.airMassFlow, reference['air_mass_flow'])).toBeLessThan(2e-3);
  expect(off(settled.work.indicated, reference['indicated_work'])).toBeLessThan(2e-3);
});
