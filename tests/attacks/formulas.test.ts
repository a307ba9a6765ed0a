/** Formulas by strangers: they end at once, and reach nothing. What else is refused is in tests/unit/quantity. */
import { describe, expect, it } from 'vitest';
import { compileFormula } from '../../src/quantity/formula.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';

const within = (open: string, close: string, depth: number): string =>
  `${open.repeat(depth)}rpm${close.repeat(depth)}`;

/** [s] */
function timed<T>(work: () => T): { readonly seconds: number; readonly value: T } {
  const begun = performance.now();
  const value = work();
  return { seconds: (performance.now() - begun) / 1000, value };
}

const reachingOut = [
  ...[
    'import("fs")',
    'import({a: 1})',
    'createUnit("x")',
    'config({})',
    'evaluate("1")',
    'parse("1")',
    'compile("1")',
  ],
  ...[
    'parser()',
    'simplify("x")',
    'derivative("x", "x")',
    'reviver()',
    'typed("a", {})',
    'chain(1)',
    'help(1)',
    'print("$x")',
  ],
  ...[
    'constructor',
    'constructor("return process")()',
    'rpm.constructor',
    'rpm["constructor"]',
    '__proto__',
    'this',
    'globalThis',
  ],
  ...[
    'process',
    'process.exit()',
    'require("fs")',
    'f(x) = x',
    'rpm = 3',
    'sqrt = 3',
    'x.y = 1',
    'f = _(x) = x',
    '{}.constructor',
  ],
  ...[
    'map([1], sqrt)',
    'cos.constructor("return 1")()',
    'toString()',
    'valueOf()',
    'hasOwnProperty("a")',
    'watch("rpm")',
  ],
];
const endless = [
  ...[
    '170!',
    '1e9!',
    'factorial(1e9)',
    'gamma(1e300)',
    '1:1e9',
    '1:1e-9:1e9',
    'range(1, 1e9)',
    'ones(1e9)',
    'zeros(1e5, 1e5)',
  ],
  ...[
    '[1:1e9]',
    'concat("a", "b")',
    'bignumber(2)^1e9',
    '2^2^2^2^2^2^2^2',
    '9^9^9^9',
    'permutations(1e9)',
    'primes(1e9)',
  ],
  ...[
    'isPrime(1e300)',
    'random()',
    'pickRandom([1])',
    'sum(1:1e9)',
    '1e9 mod 1e-9',
    'nthRoot(2, 1e9)',
    '"x" * 1e9',
    "rpm''''",
  ],
];
const long = [
  ...[
    within('(', ')', 145),
    within('-(', ')', 95),
    within('abs(', ')', 59),
    '('.repeat(300),
    '['.repeat(300),
  ],
  ...[
    '{a:'.repeat(90),
    '-'.repeat(299),
    '1?1:'.repeat(74),
    '1 '.repeat(149),
    '1/2 '.repeat(74),
    '1%'.repeat(149),
  ],
  ...[
    'a('.repeat(149),
    'a.'.repeat(149),
    '2^'.repeat(149),
    'not '.repeat(74),
    '1<'.repeat(149),
    `max(${'1,'.repeat(147)}1)`,
  ],
  ...[
    '"'.repeat(299),
    '\n'.repeat(299),
    ';'.repeat(299),
    '#'.repeat(299),
    '\u2212'.repeat(299),
    '\u0000',
    '\ud800',
    'x'.repeat(1e6),
  ],
];

describe('formulas that reach for more than their variable', () => {
  it.each(reachingOut)('%s', (text) => {
    expect(compileFormula(text, 'rpm').ok).toBe(false);
    expect(compileFormula(`0*(${text}) + 1`, 'rpm').ok).toBe(false);
  });

  it('leave nothing behind', () => {
    const before = [Object.getOwnPropertyNames(globalThis), Object.getOwnPropertyNames(Object.prototype)];
    for (const text of [...reachingOut, ...endless]) compileFormula(text, 'rpm');
    expect([Object.getOwnPropertyNames(globalThis), Object.getOwnPropertyNames(Object.prototype)]).toEqual(
      before,
    );
    const plain = compileFormula('sqrt(rpm)', 'rpm');
    expect(plain.ok && plain.value(9)).toBe(3);
  });
});

describe('formulas that would take for ever', () => {
  it.each([...endless, ...long].map((text) => [text.slice(0, 20), text]))('%s', (_start, text) => {
    const { seconds, value: formula } = timed(() => compileFormula(text, 'rpm'));
    expect(seconds).toBeLessThan(1);
    if (!formula.ok) return;
    expect(timed(() => formula.value(300)).seconds).toBeLessThan(0.1);
    expect(typeof formula.value(300)).toBe('number');
  });
});

it.each([
  'mm^999',
  'm^1e9',
  'm '.repeat(38),
  '('.repeat(70),
  '/'.repeat(70),
  'constructor',
  '__proto__',
  'mm/0',
])('units are no better a way in: %s', (unit) => {
  const { seconds, value } = timed(() => parseQuantity(`1 ${unit}`, 'length'));
  expect(value.ok).toBe(false);
  expect(seconds).toBeLessThan(1);
});
