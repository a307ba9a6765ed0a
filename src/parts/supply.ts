/** Where the air comes from: a regulator, a hose with its fittings, and the chest in front of the valves. */
import { count, group, optional, optionalGroup, pureNumber, quantity } from '../kinds/describe.ts';
import type { Complaint } from '../kinds/kind.ts';
import type { Values } from '../kinds/parameter.ts';
import { conductanceFlow, conductanceOfArea, tubeConductance, type Conductance } from '../gas/conductance.ts';
import { bisected } from '../numerics/bisection.ts';
import { conductanceInSeries } from '../gas/conductance-series.ts';
import type { Gas } from '../gas/gas.ts';
import { square } from '../numerics/elementary/whole-powers.ts';
import { conduit, type Passage } from './passage.ts';

const regulatorParameters = {
  inlet_pressure: quantity(
    'pressure',
    { min: 20e3, max: 5e6 },
    '7 bar gauge',
    'Pressure in front of it, in the receiver or the line.',
    'The gauge of the receiver; take the cut-in pressure for the worst case.',
  ),
  sonic_conductance: quantity(
    'sonic conductance',
    { min: 1e-12, max: 1e-5 },
    '3 dm^3/(s bar)',
    'C of the regulator fully open, from its data sheet (ISO 6358).',
    'From the data sheet. Given as a flow Q at 6 bar gauge and 1 bar of drop, C is roughly Q [L/min ' +
      'ANR] over 60 and over 4.2 bar, b = 0.3 assumed (derived).',
  ),
  critical_pressure_ratio: pureNumber(
    { min: 0, max: 0.6, default: 0.3 },
    '0.3',
    'b from the same data sheet.',
  ),
  droop: quantity(
    'pressure difference',
    { min: 1e3, max: 1e6 },
    '0.4 bar',
    'How far its outlet falls below the set pressure before it is fully open.',
    'Set the gauge without flow, then open a blow-off as wide as it goes: how far the gauge falls.',
  ),
};

export const supplyParameters = {
  pressure: quantity(
    'pressure',
    { min: 20e3, max: 3.1e6 },
    '4 bar gauge',
    'Pressure the regulator is set to; without a `regulator` below it is held whatever the engine takes.',
    "The regulator's gauge while air flows: open a blow-off at the engine's end until about as much " +
      'flows as the engine takes. A gauge reads `gauge`.',
  ),
  temperature: optional(
    quantity(
      'temperature',
      { min: 230, max: 420 },
      '15 degC',
      'Temperature of the air supplied; the room if not given.',
      'A thermocouple taped to the hose at the engine under a rag, after ten minutes of flow.',
    ),
  ),
  regulator: optionalGroup('A real regulator, that droops under flow.', regulatorParameters),
  hose: group('Hose from the regulator to the engine.', {
    bore: quantity(
      'length',
      { min: 1e-3, max: 0.1 },
      '8 mm',
      'Inside diameter of the narrowest long stretch.',
      'The largest drill shank that enters. If a quick coupling is long and narrower than the hose, give ' +
        'that.',
    ),
    length: quantity('length', { min: 0.01, max: 200 }, '3 m', 'Length.', 'A tape along the hose.'),
    fitting_bore: optional(
      quantity(
        'length',
        { min: 5e-4, max: 0.1 },
        '5 mm',
        'Narrowest bore of each fitting; none if not given.',
        'The largest drill shank that passes right through it; quick couplings are narrow inside.',
      ),
    ),
    fittings: count(
      { min: 1, max: 10, default: 2 },
      'How many such fittings the air passes one behind the other.',
      'Count barbs, couplings and elbows between regulator and chest.',
    ),
  }),
  rated_pressure: optional(
    quantity(
      'pressure',
      { min: 20e3, max: 5e6 },
      '10 bar gauge',
      'Working pressure marked on the weakest of hose, fittings and chest; if given, it is held against the highest pressure.',
      'Read it off the hose, the fittings and the chest. A home-made chest has none until it is tested ' +
        'with water.',
    ),
  ),
  chest_volume: quantity(
    'volume',
    { min: 1e-7, max: 0.1 },
    '40 cm3',
    'Volume between the hose and the admission valve; the hose itself is added.',
    'Fill it with water from a measuring cup.',
  ),
};

export const supply = group('Compressed air through a hose into a valve chest.', supplyParameters);

export type Supply = Values<typeof supplyParameters>;
type Regulator = Values<typeof regulatorParameters>;

/** Discharge coefficient of a fitting's bore: common practice, no source. */
const FITTING_DISCHARGE = 0.7;

export const hoseVolume = ({ hose }: Supply): number => (Math.PI / 4) * square(hose.bore) * hose.length;

/** The hose with its fittings as one element. */
export function hoseConductance({ hose }: Supply): Conductance {
  const tube = tubeConductance(hose.bore, hose.length);
  if (hose.fitting_bore === undefined) return tube;
  const fitting: Conductance = {
    sonicConductance: conductanceOfArea((FITTING_DISCHARGE * Math.PI * square(hose.fitting_bore)) / 4),
    criticalPressureRatio: 0.5,
  };
  return conductanceInSeries([tube, ...Array.from({ length: hose.fittings }, () => fitting)]);
}

/** The hose, from where it begins: the held supply, or the volume behind a regulator. */
export function hosePassage(own: Supply, gas: Gas): Passage {
  const from = own.regulator ? 'hose' : 'supply';
  return conduit(gas, { name: 'hose', from, to: 'chest' }, hoseConductance(own));
}

/**
 * A pressure regulator: shut at its set pressure, opening in proportion as the outlet falls below it, fully open one
 * droop below. It passes nothing backwards. Proportional law: common practice, no source; C and b: ISO 6358.
 */
function regulatorFlow(
  regulator: Regulator,
  setPressure: number,
  gas: Gas,
): (inlet: number, temperature: number, outlet: number) => number {
  const element: Conductance = {
    sonicConductance: regulator.sonic_conductance,
    criticalPressureRatio: regulator.critical_pressure_ratio,
  };
  return (inlet, temperature, outlet) => {
    const opening = Math.min(1, (setPressure - outlet) / regulator.droop);
    if (opening <= 0 || inlet <= outlet) return 0;
    return opening * conductanceFlow(gas, element, inlet, temperature, outlet);
  };
}

export function regulatorPassage(regulator: Regulator, setPressure: number, gas: Gas): Passage {
  const flow = regulatorFlow(regulator, setPressure, gas);
  return {
    name: 'regulator',
    role: 'supply',
    from: 'supply',
    to: 'hose',
    massFlow: (_angle, pFrom, tFrom, pTo) => flow(pFrom, tFrom, pTo),
  };
}

/**
 * Pressure behind the regulator under a steady flow [Pa]. One that is not described holds its set pressure as long as
 * there is as much in front of it, and then passes on what there is.
 */
export function outletPressure(
  { pressure, regulator }: Supply,
  gas: Gas,
  at: { readonly inlet: number; readonly temperature: number; readonly massFlow: number },
): number {
  const highest = Math.min(pressure, at.inlet);
  if (regulator === undefined) return highest;
  const flow = regulatorFlow(regulator, pressure, gas);
  const enough = (outlet: number): boolean => flow(at.inlet, at.temperature, outlet) >= at.massFlow;
  return bisected(enough, 0.1 * highest, highest);
}

const bar = (pressure: number): string => `${(pressure / 1e5).toFixed(3)} bar absolute`;

export function supplyComplaints(
  { pressure, regulator }: Supply,
  roomPressure: number,
): readonly Complaint[] {
  const found: Complaint[] = [];
  if (pressure <= roomPressure)
    found.push({
      path: ['pressure'],
      expected: `above the pressure of the room, ${bar(roomPressure)}`,
      received: bar(pressure),
    });
  if (regulator && regulator.inlet_pressure < pressure)
    found.push({
      path: ['regulator', 'inlet_pressure'],
      expected: `at least the set pressure, ${bar(pressure)}`,
      received: bar(regulator.inlet_pressure),
      hint: 'A regulator can only lower a pressure.',
    });
  return found;
}
