/**
 * What each dimension is called, which SI units it has inside, and in which units people like to read it.
 *
 * An angle is dimensionless in SI but a dimension of its own here, so that "50 mm" of a bore and "50 deg" of a cam are
 * told apart. Torque per speed is accepted with and without it: N·m·s and N·m/(rad/s) are the same thing.
 */
import type { Dimension } from '../kinds/parameter.ts';
import { cube, square } from '../numerics/elementary/whole-powers.ts';

export interface DisplayUnit {
  readonly label: string;
  /** Size of the unit in SI. */
  readonly size: number;
  /** Used from this magnitude upwards, SI. */
  readonly from: number;
  /** Where the scale begins, SI; only temperatures have one. */
  readonly zero?: number;
}

type Displays = readonly [DisplayUnit, ...DisplayUnit[]];

interface DimensionFacts {
  /** With its article, for messages: "a length". */
  readonly name: string;
  /** SI units as mathjs writes them; each one counts as this dimension. */
  readonly si: readonly [string, ...string[]];
  /** Ascending. */
  readonly display: Displays;
  /** Ascending; where there is none, the metric ones are customary everywhere. */
  readonly imperial?: Displays;
  readonly example: string;
}

/** International inch and pound, standard gravity: exact. */
const INCH = 0.0254;
const FOOT = 12 * INCH;
const POUND = 0.453_592_37;
const POUND_FORCE = POUND * 9.806_65;
const PSI = POUND_FORCE / square(INCH);

const unit = (label: string, size: number, from = 0): DisplayUnit => ({ label, size, from });

export const dimensions: Readonly<Record<Dimension, DimensionFacts>> = {
  length: {
    name: 'a length',
    si: ['m'],
    display: [unit('µm', 1e-6), unit('mm', 1e-3, 1e-4), unit('m', 1, 1)],
    imperial: [unit('thou', INCH / 1000), unit('in', INCH, 0.02 * INCH), unit('ft', FOOT, 3 * FOOT)],
    example: '16 mm',
  },
  area: {
    name: 'an area',
    si: ['m^2'],
    display: [unit('mm²', 1e-6), unit('m²', 1, 0.1)],
    imperial: [unit('in²', square(INCH))],
    example: '12 mm²',
  },
  volume: {
    name: 'a volume',
    si: ['m^3'],
    display: [unit('mm³', 1e-9), unit('cm³', 1e-6, 1e-7), unit('L', 1e-3, 1e-3)],
    imperial: [unit('in³', cube(INCH)), unit('ft³', cube(FOOT), 0.1 * cube(FOOT))],
    example: '20 cm³',
  },
  mass: {
    name: 'a mass',
    si: ['kg'],
    display: [unit('g', 1e-3), unit('kg', 1, 1)],
    imperial: [unit('oz', POUND / 16), unit('lb', POUND, POUND)],
    example: '50 g',
  },
  density: {
    name: 'a density',
    si: ['kg/m^3'],
    display: [unit('kg/m³', 1)],
    imperial: [unit('lb/ft³', POUND / cube(FOOT))],
    example: '7850 kg/m³',
  },
  time: {
    name: 'a time',
    si: ['s'],
    display: [unit('ms', 1e-3), unit('s', 1, 1), unit('min', 60, 300)],
    example: '20 s',
  },
  angle: { name: 'an angle', si: ['rad'], display: [unit('°', Math.PI / 180)], example: '30 deg' },
  'rotational speed': {
    name: 'a rotational speed',
    si: ['rad/s'],
    display: [unit('rpm', Math.PI / 30)],
    example: '400 rpm',
  },
  pressure: {
    name: 'a pressure',
    si: ['Pa'],
    display: [unit('bar', 1e5)],
    imperial: [unit('psi', PSI)],
    example: '4 bar gauge',
  },
  'pressure difference': {
    name: 'a pressure difference',
    si: ['Pa'],
    display: [unit('Pa', 1), unit('bar', 1e5, 1e3)],
    imperial: [unit('psi', PSI)],
    example: '0.4 bar',
  },
  temperature: {
    name: 'a temperature',
    si: ['K'],
    display: [{ label: '°C', size: 1, from: 0, zero: 273.15 }],
    imperial: [{ label: '°F', size: 5 / 9, from: 0, zero: 459.67 / 1.8 }],
    example: '20 °C',
  },
  force: {
    name: 'a force',
    si: ['N'],
    display: [unit('N', 1)],
    imperial: [unit('lbf', POUND_FORCE)],
    example: '5 N',
  },
  'force per pressure': {
    name: 'a force per pressure',
    si: ['N/Pa'],
    display: [unit('N/bar', 1e-5)],
    imperial: [unit('lbf/psi', square(INCH))],
    example: '2 N/bar',
  },
  torque: {
    name: 'a torque',
    si: ['N m'],
    display: [unit('mN·m', 1e-3), unit('N·m', 1, 1)],
    imperial: [unit('lbf·in', POUND_FORCE * INCH), unit('lbf·ft', POUND_FORCE * FOOT, POUND_FORCE * FOOT)],
    example: '20 mN·m',
  },
  'torque per speed': {
    name: 'a torque per speed',
    si: ['N m s/rad', 'N m s'],
    display: [unit('µN·m·s', 1e-6), unit('mN·m·s', 1e-3, 1e-3), unit('N·m·s', 1, 1)],
    imperial: [unit('lbf·in·s', POUND_FORCE * INCH)],
    example: '0.2 mN·m·s',
  },
  'torque per speed squared': {
    name: 'a torque per speed squared',
    si: ['N m s^2/rad^2', 'N m s^2'],
    display: [unit('µN·m·s²', 1e-6), unit('mN·m·s²', 1e-3, 1e-3)],
    imperial: [unit('lbf·in·s²', POUND_FORCE * INCH)],
    example: '3 µN·m·s²',
  },
  'moment of inertia': {
    name: 'a moment of inertia',
    si: ['kg m^2'],
    display: [unit('kg·cm²', 1e-4), unit('kg·m²', 1, 0.1)],
    imperial: [
      unit('lb·in²', POUND * square(INCH)),
      unit('lb·ft²', POUND * square(FOOT), POUND * square(FOOT)),
    ],
    example: '4 kg·cm²',
  },
  'dynamic viscosity': {
    name: 'a dynamic viscosity',
    si: ['Pa s'],
    display: [unit('µPa·s', 1e-6), unit('mPa·s', 1e-3, 1e-3), unit('Pa·s', 1, 1)],
    example: '30 mPa·s',
  },
  'volume flow': {
    name: 'a volume flow',
    si: ['m^3/s'],
    display: [unit('L/min', 1e-3 / 60)],
    imperial: [unit('cfm', cube(FOOT) / 60)],
    example: '50 L/min',
  },
  'sonic conductance': {
    name: 'a sonic conductance',
    si: ['m^3/(s Pa)'],
    display: [unit('dm³/(s·bar)', 1e-8)],
    example: '1.5 dm³/(s·bar)',
  },
  'heat transfer coefficient': {
    name: 'a heat transfer coefficient',
    si: ['W/(m^2 K)'],
    display: [unit('W/(m²·K)', 1)],
    example: '100 W/(m²·K)',
  },
};
