/** `tickover explain KEY`: what a key of a scenario means, its range, and how to measure it. */
import { styleText } from 'node:util';
import { engineParameters, explainKey, type KeyExplanation, type UnitSystem } from '../../index.ts';
import { columns, wrapped } from '../columns.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { unitsOption } from '../options.ts';
import { plain, WIDTH } from '../plain.ts';
import type { Command } from './command.ts';

function explain(key: string | undefined, units: UnitSystem, print: (text: string) => void): ExitCode {
  const explained = explainKey(engineParameters, key, units);
  if (!explained.ok) throw new InputError(unknownKey(key ?? '', explained.nearest));
  print(explained.explanations.map(explanationText).join('\n\n'));
  return EXIT.ran;
}

function unknownKey(key: string, nearest: string | undefined): string {
  const hint =
    nearest === undefined ? '"tickover explain" lists the keys at the top.' : `Did you mean "${nearest}"?`;
  return `No key or kind of part is called "${plain(key)}". ${hint}`;
}

function explanationText({
  paths,
  kinds,
  meaning,
  expected,
  leftOut,
  example,
  measure,
  members,
}: KeyExplanation): string {
  const facts: [string, string][] = [
    ...(kinds.length === 0 ? [] : [['of the kinds', kinds.join(', ')] satisfies [string, string]]),
    ...(members.length > 0 ? [] : [['expected', expected] satisfies [string, string]]),
    ['left out', leftOut],
    ...(example === undefined ? [] : [['example', example] satisfies [string, string]]),
    ...(measure === undefined ? [] : [['to measure', measure] satisfies [string, string]]),
  ];
  return [
    ...(paths.length === 0 ? [] : [styleText('bold', wrapped(paths.join(', '), WIDTH))]),
    wrapped(meaning, WIDTH, '  ', '  '),
    ...(paths.length === 0 ? [] : [columns(facts, '  ', WIDTH)]),
    ...(members.length === 0 ? [] : ['', columns(members, '    ', WIDTH)]),
  ].join('\n');
}

export const explainCommand: Command = (args, { print, guarded }) =>
  args.command(
    'explain [key]',
    'Say what a key of a scenario means, its range, and how to measure it.',
    (own) =>
      own
        .positional('key', { type: 'string', describe: 'A key, its whole path, or a kind of part' })
        .options(unitsOption)
        .example('$0 explain', 'the keys at the top of a scenario')
        .example('$0 explain cylinder.clearance', 'one key')
        .example('$0 explain "rotary disc"', 'a kind of part and its keys')
        .example('$0 explain supply.pressure --units imperial', 'ranges in psi'),
    ({ key, units }) => guarded(() => Promise.resolve(explain(key, units, print))),
  );
