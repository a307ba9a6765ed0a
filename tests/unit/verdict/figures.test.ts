import { expect, test } from 'vitest';
import { inUnits } from '../../../src/quantity/unit-system.ts';
import {
  airText,
  barText,
  celsiusText,
  figure,
  fixed,
  gaugeText,
  inReadersUnits,
  minutesText,
  pressureText,
  shareText,
  speedText,
  stressText,
  waterText,
} from '../../../src/verdict/figures.ts';
import { settledResult } from '../report/synthetic-result.ts';

const { gas } = settledResult.engine;

test.each([
  [0, '0'],
  [0.012345, '0.0123'],
  [1.2345, '1.23'],
  [123.45, '123'],
  [12_345.6, '12346'],
  [-0.5, '−0.500'],
  [NaN, 'not known'],
  [Infinity, 'not known'],
])('the figure %s is "%s"', (value, text) => {
  expect(figure(value)).toBe(text);
});

test('a number that rounds to zero has no sign', () => {
  expect(fixed(-0.001, 2)).toBe('0.00');
});

test('units of the trade', () => {
  expect(speedText(10 * Math.PI)).toBe('300 rpm');
  expect(barText(2.5e5)).toBe('2.50 bar');
  expect(gaugeText(3e5, 1e5)).toBe('2.00 bar gauge');
  expect(pressureText(3e5, 1e5)).toBe('2.00 bar gauge (3.00 bar absolute)');
  expect(celsiusText(263.15)).toBe('−10 °C');
  expect(shareText(0.0449)).toBe('4.5 %');
  expect(shareText(0.0999)).toBe('10 %');
  expect(minutesText(0.5)).toBe('30 seconds');
  expect(minutesText(3.42)).toBe('3.4 minutes');
});

test('air is quoted in L/min ANR with cfm beside it: a cubic foot is 28.3168 L', () => {
  expect(airText(28.316_846_592e-3 / 60, gas)).toBe('28.3 L/min ANR (1.00 cfm)');
});

test('another gas is no reference air, and says under what conditions it is measured', () => {
  expect(airText(1e-3, { ...gas, name: 'nitrogen', origin: 'bottles' })).toBe(
    '60.0 L/min at 100 kPa and 20 °C (2.12 cfm)',
  );
});

test('water is quoted in grams an hour, stress in MPa', () => {
  expect(waterText(12.5e-3 / 3600)).toBe('13 g');
  expect(stressText(6.48e6)).toBe('6.5 MPa');
  expect(stressText(1e3)).toBe('less than 0.01 MPa');
});

test('a torque in a filed sentence is told in the units of the reader', () => {
  const filed = 'It stays at 90°: no air pushes there, and 1.36 N·m are needed to move on.';
  expect(inReadersUnits(filed)).toBe(filed);
  expect(inUnits('imperial', () => inReadersUnits(filed))).toBe(
    'It stays at 90°: no air pushes there, and 1.00 lbf·ft are needed to move on.',
  );
});
