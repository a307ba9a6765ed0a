import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileFormula } from '../../../src/quantity/formula.ts';

function valueAt(text: string, x: number): number {
  const formula = compileFormula(text, 'rpm');
  if (!formula.ok) throw new Error(`${text}: ${formula.reason}`);
  return formula.value(x);
}

function reasonFor(text: string): string {
  const formula = compileFormula(text, 'rpm');
  return formula.ok ? 'allowed' : formula.reason;
}

describe('a formula', () => {
  it.each([
    ['0.4 + 0.002*rpm', 0.8],
    ['-rpm^2', -40_000],
    ['2^-1', 0.5],
    ['+(rpm - 100)/4', 25],
    ['2^3^2', 512],
    ['sqrt(abs(-16)) + exp(0) + log(e)', 6],
    ['sin(0) + cos(pi) + tan(0) + tanh(0)', -1],
    ['min(rpm, 50, 70) + max(1)', 51],
    ['rpm > 100 ? 1 : 2', 1],
    ['(rpm <= 100) ? 1 : rpm < 300 ? 3 : 4', 3],
    ['rpm >= 200 ? 5 : 6', 5],
    ['6 % * rpm', 12],
  ])('%s', (text, value) => {
    expect(valueAt(text, 200)).toBeCloseTo(value, 12);
  });

  it.each([
    ['import("fs")', 'the function "import"'],
    ['constructor', 'the unknown name "constructor"'],
    ['constructor("return 1")', 'the function "constructor"'],
    ['rpm.constructor', 'an access to an inner property'],
    ['rpm["constructor"]', 'an access to an inner property'],
    ['cos.constructor("return 1")()', 'not a formula'],
    ['rpm.toString()', 'a call of something else'],
    ['__proto__', 'the unknown name "__proto__"'],
    ['toString(rpm)', 'the function "toString"'],
    ['rpm = 3', 'an assignment'],
    ['f(x) = x', 'the definition of a function'],
    ['"text"', 'a piece of text'],
    ['true', 'a value that is no number'],
    ['[1, 2]', 'a list'],
    ['{a: 1}', 'an object'],
    ['1; 2', 'several formulas'],
    ['1:3', 'a range'],
    ['1 < rpm < 3', 'a chain of comparisons'],
    ['rpm > 3', 'the operator ">"'],
    ['rpm ? 1 : 2', 'a condition that is no comparison'],
    ['rpm == 3 ? 1 : 2', 'a condition that is no comparison'],
    ['rpm!', 'the operator "!"'],
    ['5 mod rpm', 'the operator "mod"'],
    ['2 rpm', 'a product without "*"'],
    ['0.4 N m', 'a product without "*"'],
    ['i', 'the unknown name "i"'],
    ['1e999', 'a number that is not finite'],
    ['Infinity', 'a number that is not finite'],
    ['sqrt()', '"sqrt" with 0 values instead of one'],
    ['sqrt(1, 2)', '"sqrt" with 2 values instead of one'],
    ['max()', '"max" with no values'],
    ['(', 'not a formula'],
    ['', 'a value that is no number'],
    ['('.repeat(100) + '1' + ')'.repeat(100), 'too complicated'],
    ['-'.repeat(200) + '1', 'too complicated'],
    ['1+'.repeat(140) + '1', 'too complicated'],
    ['1'.repeat(301), 'longer than 300 characters'],
  ])('refuses %s', (text, reason) => {
    expect(reasonFor(text)).toBe(reason);
  });

  it('lists what is allowed', () => {
    expect(compileFormula('x', 'rpm')).toMatchObject({
      hint:
        'Allowed are numbers, rpm, pi, e, + - * / ^, brackets, abs, sqrt, exp, log, sin, cos, tan, tanh, min, max, ' +
        'and "a > b ? x : y".',
    });
  });

  it('never throws and never reaches outside', () => {
    const pieces = [
      'rpm',
      '1',
      '+',
      '*',
      '(',
      ')',
      '.',
      'constructor',
      '"',
      '[',
      ']',
      '=',
      '?',
      ':',
      ',',
      'cos',
      ' ',
      '>',
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 12 }), (parts) => {
        const formula = compileFormula(parts.join(''), 'rpm');
        expect(formula.ok ? typeof formula.value(3) : 'number').toBe('number');
      }),
      { numRuns: 2000 },
    );
  });
});
