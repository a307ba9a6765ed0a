import { describe, expect, it } from 'vitest';
import { parseCrankPosition } from '../../../src/quantity/crank-position.ts';

describe('a place in the turn', () => {
  it.each([
    ['180 deg', { by: 'angle', angle: Math.PI }],
    ['-90°', { by: 'angle', angle: -Math.PI / 2 }],
    ['0.5 rad', { by: 'angle', angle: 0.5 }],
    ['35 % of stroke', { by: 'outward stroke', fraction: 0.35 }],
    ['35% of the outward stroke', { by: 'outward stroke', fraction: 0.35 }],
    ['90 % of return stroke', { by: 'return stroke', fraction: 0.9 }],
  ])('%s', (text, value) => {
    expect(parseCrankPosition(text)).toEqual({ ok: true, value });
  });

  it.each([
    ['35', 'no unit', 'Write "35 deg" or "35 % of stroke" or "35 % of return stroke".'],
    ['130', 'no unit', 'Write "130 deg".'],
    ['35 %', 'a percentage of what is not said', 'Write "35 % of stroke" or "35 % of return stroke".'],
    ['130 % of stroke', 'outside the stroke', 'A share of a stroke lies between 0 % and 100 %.'],
    ['-1 % of stroke', 'outside the stroke', 'A share of a stroke lies between 0 % and 100 %.'],
    ['1e3 deg', 'more than two turns', 'A crank angle lies between -720 deg and 720 deg.'],
    ['12 mm', 'a length', 'Write "35 % of stroke".'],
    ['1,5 % of stroke', 'a decimal comma', 'Write "1.5 % of stroke".'],
    ['5 mm % of stroke', 'more than a plain number', 'Write "5" or "5 %".'],
    ['late', 'not a number', 'Write "35 % of stroke".'],
  ])('refuses %s', (text, reason, hint) => {
    expect(parseCrankPosition(text)).toEqual({ ok: false, reason, hint });
  });
});
