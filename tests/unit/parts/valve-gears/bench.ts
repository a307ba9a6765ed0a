/** What tests of valve gears share: the engine they sit on, and events read off the areas alone. */
import { dryAir } from '../../../../src/gas/gases/dry-air.ts';
import type { PartContext } from '../../../../src/parts/part-context.ts';
import type { Port } from '../../../../src/parts/passage.ts';
import type { GearPressures, ValveEvents, ValveGear } from '../../../../src/parts/valve-gears/valve-gear.ts';

export const DEGREE = Math.PI / 180;
const TURN = 2 * Math.PI;

/** 50 × 60 mm, rod of two strokes. */
export const context: PartContext = {
  gas: dryAir,
  crank: { crankRadius: 0.03, rodLength: 0.12 },
  bore: 0.05,
  doubleActing: false,
  rodDiameter: 0,
  atmosphericPressure: 101_325,
  atmosphericTemperature: 288.15,
};

/** No air on: the pressure of the room everywhere. */
export const noAir: GearPressures = { chest: 101_325, cylinder: 101_325, otherEnd: 101_325 };

/** Work [J] that driving a gear takes over a turn under pressures that stay; by the midpoint rule. */
export function dragWork(gear: ValveGear, pressures: GearPressures, points = 3600): number {
  let work = 0;
  for (let i = 0; i < points; i += 1)
    work += (gear.dragTorque(((i + 0.5) * TURN) / points, 30, pressures) * TURN) / points;
  return work;
}

/** Effective area [m²] of a port over the crank angle. */
export function areaOf(gear: ValveGear, role: Port['role']): (angle: number) => number {
  const found = gear.ports.find((candidate) => candidate.role === role);
  if (found === undefined) throw new Error(`no ${role} port`);
  return (angle) => found.effectiveArea(angle, 0);
}

/** Flow [kg/s] of a leak by its name, 4 bar to 1 bar at 15 °C. */
export function leakFlow(gear: ValveGear, name: string, angle: number): number {
  const found = gear.sealingGaps.find((candidate) => candidate.name === name);
  if (found === undefined) throw new Error(`no leak "${name}"`);
  return found.massFlow(angle, 4e5, 288.15, 1e5, 288.15, 0);
}

export function sizeOf(gear: ValveGear, label: string): number {
  const found = gear.derivedSizes.find((candidate) => candidate.label === label);
  if (found === undefined) throw new Error(`no size "${label}"`);
  return found.value;
}

/** Keeps samples off round angles, where events like to lie [rad]. */
const OFF_ROUND = 1e-4;

/** Where a port changes from shut to open and back, found by looking at nothing but its area; one opening a turn. */
function openAndShut(area: (angle: number) => number): readonly [number, number] {
  const n = 7200;
  const isOpen = (angle: number): boolean => area(angle) > 0;
  const change = (towards: boolean): number => {
    for (let i = 0; i < n; i += 1) {
      let [a, b] = [OFF_ROUND + (i * TURN) / n, OFF_ROUND + ((i + 1) * TURN) / n];
      if (isOpen(a) === towards || isOpen(b) !== towards) continue;
      for (let k = 0; k < 50; k += 1) {
        const middle = (a + b) / 2;
        if (isOpen(middle) === towards) b = middle;
        else a = middle;
      }
      return b % TURN;
    }
    throw new Error('the port never changes');
  };
  return [change(true), change(false)];
}

export function observedEvents(gear: ValveGear): ValveEvents {
  const [admission, cutOff] = openAndShut(areaOf(gear, 'admission'));
  const [release, compression] = openAndShut(areaOf(gear, 'exhaust'));
  return { admission, cutOff, release, compression };
}

/** Largest distance round the circle between events and events observed [rad]. */
export function eventDeviation(a: ValveEvents, b: ValveEvents): number {
  const names = ['admission', 'cutOff', 'release', 'compression'] as const;
  const apart = (x: number, y: number): number => Math.abs(((x - y + 3 * Math.PI) % TURN) - Math.PI);
  return Math.max(...names.map((name) => apart(a[name], b[name])));
}
