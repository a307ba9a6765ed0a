/** Values one by one, numbers or words. */
import { textList } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import { readNumber } from '../../quantity/number.ts';
import { pathParameters } from './path-parameters.ts';
import type { Variation } from './variation.ts';

/** The unit that all texts have in common. */
function commonUnit(texts: readonly string[]): string | undefined {
  const units = texts.map((text) => {
    const number = readNumber(text, '');
    return number.ok ? number.rest : undefined;
  });
  const [first] = units;
  // "7/g6" would count as a number too.
  return first !== undefined && !/\d/u.test(first) && units.every((unit) => unit === first)
    ? first
    : undefined;
}

export function valuesOf(paths: readonly string[], values: readonly string[]): Variation {
  const level = (index: number): string => values[index] ?? '';
  const unit = commonUnit(values);
  return {
    paths,
    count: values.length,
    level,
    at: (share) => level(Math.min(Math.floor(share * values.length), values.length - 1)),
    ...(unit === undefined ? {} : { unit }),
  };
}

export const values = kindOf({
  kind: 'values',
  doc: 'Values one by one: sizes, fits, finishes, kinds of parts.',
  parameters: {
    ...pathParameters,
    values: textList(
      { min: 1, max: 10_000 },
      'reamed / turned',
      'The values; "left out" leaves the engine as its file has it.',
    ),
  },
  build: (own, _context: null): Variation => valuesOf([own.setting, ...own.also], own.values),
});
