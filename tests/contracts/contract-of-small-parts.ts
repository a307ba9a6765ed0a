/** What loads, flywheels, wall heats, gases and cam laws owe the model. */
import type { Gas } from '../../src/gas/gas.ts';
import { chokedFlow, nozzleFlow } from '../../src/gas/nozzle.ts';
import type { CamLaw } from '../../src/parts/cams/cam-law.ts';
import type { Flywheel } from '../../src/parts/flywheels/flywheel.ts';
import type { Load } from '../../src/parts/loads/load.ts';
import type { WallHeat } from '../../src/parts/wall-heat/wall-heat.ts';
import { checkComplaints } from '../support/gas-property.ts';
import { evenly, isContinuous, isSmooth, unless } from './complaints.ts';

const isGood = (value: number): boolean => Number.isFinite(value) && value >= 0;

export function loadComplaints(load: Load): string[] {
  const speeds = [0, 1e-9, 1e-3, ...evenly(0, 2000, 400)];
  return [
    ...unless(
      speeds.every((speed) => isGood(load.torque(speed))),
      'torque not finite or below zero between 0 and 2000 rad/s',
    ),
    ...unless(
      speeds.every((speed) => quadraticTorque(load, speed) === load.torque(speed)),
      'torque is not what its numbers say',
    ),
  ];
}

/** As the kernel reckons it, in the same order; the torque itself where there are no numbers. */
function quadraticTorque(load: Load, speed: number): number {
  const { quadratic } = load;
  if (!quadratic) return load.torque(speed);
  const [constant, perSpeed, perSquare] = quadratic;
  return constant + perSpeed * speed + perSquare * speed * speed;
}

export function flywheelComplaints({ momentOfInertia, rim }: Flywheel): string[] {
  return [
    ...unless(Number.isFinite(momentOfInertia) && momentOfInertia > 0, 'moment of inertia not above zero'),
    ...unless(rim === undefined || (rim.radius > 0 && rim.density > 0), 'a rim without radius or density'),
  ];
}

export function wallHeatComplaints(wall: WallHeat): string[] {
  const temperatures = evenly(150, 600, 45);
  const flows = temperatures.map((t) => wall.flow(0.01, t, 3e5, 20));
  const steady = wall.law?.kind === 'steady' ? wall.law : undefined;
  const steadyFlow = (area: number, t: number): number =>
    steady!.coefficient * area * (steady!.wallTemperature - t);
  const isSteady = (area: number, p: number, speed: number): boolean =>
    // Whether nothing is above or below zero does not matter.
    temperatures.every((t) => wall.flow(area, t, p, speed) - steadyFlow(area, t) === 0);
  return [
    ...unless(
      !steady || (isSteady(0.01, 1e5, 0) && isSteady(0.02, 3e5, 20) && isSteady(0.01, 9e5, 200)),
      'heat flow is not what its numbers say',
    ),
    ...unless(flows.every(Number.isFinite), 'heat flow not finite'),
    ...unless(
      flows.slice(1).every((flow, i) => flow <= flows[i]!),
      'a hotter gas gets more heat',
    ),
    ...unless(
      temperatures.every((t) => wall.flow(0, t, 3e5, 20) === 0),
      'heat flows through no area',
    ),
  ];
}

const close = (a: number, b: number, relative: number): boolean => Math.abs(a - b) <= relative * Math.abs(b);

export function gasComplaints(gas: Gas): string[] {
  const { heatCapacityAtConstantPressure: cp, heatCapacityAtConstantVolume: cv } = gas;
  const p1 = 5e5;
  const flow = (ratio: number): number => nozzleFlow(gas, 1e-5, p1, 290, ratio * p1);
  const critical = gas.criticalPressureRatio;
  const flows = evenly(1e-3, 1, 500).map(flow);
  const viscosityRange = evenly(150, 600, 45);
  const viscosities = viscosityRange.map((t) => gas.viscosity(t));
  const { factor, constant } = gas.viscosity;
  return [
    ...unless(
      viscosityRange.every((t) => gas.viscosity(t) === (factor * t * Math.sqrt(t)) / (t + constant)),
      'viscosity is not what its numbers say',
    ),
    ...unless(close(cp - cv, gas.specificGasConstant, 1e-12), 'cp − cv is not R'),
    ...unless(close(cp / cv, gas.heatCapacityRatio, 1e-12), 'cp/cv is not γ'),
    ...unless(gas.heatCapacityRatio > 1 && critical > 0 && critical < 1, 'γ or critical ratio out of range'),
    // The rounding of the square root takes 4e-7 of the choked flow.
    ...unless(close(flow(0.1), chokedFlow(gas, 1e-5, p1, 290), 1e-6), 'choked flow and nozzle flow differ'),
    ...unless(close(flow(critical * (1 + 1e-9)), flow(critical * (1 - 1e-9)), 1e-8), 'jumps as it chokes'),
    ...unless(flow(1) === 0, 'flows between equal pressures'),
    ...unless(isContinuous(flow, 0.99, 1, 200), 'jumps at equal pressures'),
    ...unless(
      flows.slice(1).every((q, i) => q <= flows[i]! * (1 + 1e-12)),
      'flow grows with growing pressure behind it',
    ),
    ...unless(
      viscosities.every((mu) => Number.isFinite(mu) && mu > 0),
      'viscosity not above zero',
    ),
    ...unless(gas.equalPressureRounding > 0 && gas.name !== '', 'no rounding or no name'),
    ...checkComplaints(gas),
  ];
}

export function camLawComplaints(law: Pick<CamLaw, 'name' | 'lift'>): string[] {
  const lift = (u: number): number => law.lift(u);
  const places = evenly(0, 1, 1000);
  const lifts = places.map(lift);
  const step = 1e-5;
  return [
    ...unless(Math.abs(lift(0)) < 1e-15 && Math.abs(lift(1) - 1) < 1e-14, 'does not rise from 0 to 1'),
    ...unless(
      lifts.slice(1).every((s, i) => s >= lifts[i]! - 1e-15),
      'falls on its way up',
    ),
    ...unless(
      places.every((u) => Math.abs(lift(u) + lift(1 - u) - 1) < 1e-13),
      'rises otherwise than it arrives',
    ),
    ...unless(lift(step) < 100 * step * step, 'begins with a knock'),
    ...unless(isSmooth(lift, 0, 1, 203, 1e-14), 'kinks on its way'),
  ];
}
