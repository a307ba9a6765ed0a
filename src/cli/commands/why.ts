/** `tickover why FILE --symptom …`: causes for what is seen on the bench, ranked by the numbers of the scenario. */
import {
  diagnosis,
  parseQuantity,
  symptomNames,
  symptoms,
  type Symptom,
  type TitledFinding,
} from '../../index.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { findingOptions, sayFinding, type FindingOptions } from '../say-finding.ts';
import { engineFromFile } from '../scenario-file.ts';
import type { Command } from './command.ts';

interface WhyOptions extends FindingOptions {
  readonly symptom: string;
  readonly at: string | undefined;
}

/** On the command line the words of a symptom are joined by hyphens. */
const hyphened = symptomNames.map((name) => name.replaceAll(' ', '-'));

const listing = symptomNames.map((name, i) => `  ${hyphened[i] ?? ''}: ${symptoms[name]}`).join('\n');

function symptomOf(text: string): Symptom {
  const found = symptomNames.find((name) => name === text.replaceAll('-', ' ').trim());
  if (found !== undefined) return found;
  throw new InputError(`--symptom: expected one of the following, received "${text}".\n${listing}`);
}

function angleOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const angle = parseQuantity(text, 'angle', '75 deg');
  if (angle.ok) return angle.value;
  throw new InputError(
    `--at: expected a crank angle with its unit, received "${text}" (${angle.reason}). ${angle.hint}`,
  );
}

function findingOf({ file, symptom, at }: WhyOptions): TitledFinding {
  const [what, angle] = [symptomOf(symptom), angleOf(at)];
  const spec = engineFromFile(file);
  return {
    title: spec.title,
    notes: spec.notes,
    test: `why it ${what}`,
    finding: diagnosis(spec, what, angle),
  };
}

async function explain(options: WhyOptions, print: (text: string) => void): Promise<ExitCode> {
  await sayFinding(() => findingOf(options), options, print);
  return EXIT.ran;
}

export const why: Command = (args, { print, guarded }) =>
  args.command(
    'why <file>',
    'Why will it not run? Causes for a symptom, each with its number and the test that would confirm it.',
    (own) =>
      findingOptions(own, 'Scenario file (YAML)')
        .option('symptom', {
          type: 'string',
          requiresArg: true,
          demandOption: true,
          describe: `What is seen: ${hyphened.join(', ')}`,
        })
        .option('at', {
          type: 'string',
          requiresArg: true,
          describe: 'Crank angle where it stops or stands, such as 75deg',
        })
        .example(
          '$0 why scenarios/cider-press.yaml --symptom hisses-at-rest --at 120deg',
          'what is it that hisses?',
        ),
    ({ file, out, json, units, symptom, at }) =>
      guarded(() => explain({ file, out, json, units, symptom, at }, print)),
  );
