/**
 * A complete scenario to start from, with every key explained: made from the descriptions, so it names exactly the keys
 * there are. What has to be given is given as in the examples; what may be left out stands there behind a "#".
 */
import type { AnyKind, FirstEngine } from '../kinds/kind.ts';
import type {
  GroupParameter,
  LeafParameter,
  Parameter,
  Parameters,
  PartListParameter,
  PartParameter,
  SettingsParameter,
} from '../kinds/parameter.ts';
import { engineParameters } from '../parts/engine-description.ts';
import { valveGears } from '../parts/valve-gears/registry.ts';
import { exampleOf, expectation, kindNames, kindsOf, mayBeAbsent, presetText } from './expectation.ts';

/** The text of a scenario, and of what belongs beside it. */
export interface NewScenario {
  readonly text: string;
  /** Tables that it names, to be put beside it. */
  readonly files: Readonly<Record<string, string>>;
}

const HEAD = [
  'An engine to start from. It runs as it stands; change it until it is yours, and run it again.',
  'Every value carries its unit; a pressure says gauge or absolute; crank angles count from top dead centre in the ' +
    'running direction. A line that begins with "#" and a key is left out: take the "#" away to give it.',
  '"tickover explain KEY" says how to measure a value, "tickover check FILE" finds slips, "tickover run FILE" answers.',
];

const WIDTH = 100;

/** Values for any first engine; the gear's own come on top. */
const commonValues: FirstEngine['values'] = {
  title: 'My engine',
  'flywheel.kind': 'disc',
  'load.kind': 'fan',
  'leaks.kind': 'plain piston',
};

/** Kinds of valve gear that a new scenario can be made for. */
export const valveGearKinds: readonly string[] = valveGears.kinds.map(({ kind }) => kind);

/** `gear` is one of `valveGearKinds`. */
export function newScenario(gear: string): NewScenario {
  const kind = valveGears.kinds.find((own) => own.kind === gear);
  if (kind === undefined) throw new Error(`no valve gear is called "${gear}"`);
  const first = kind.firstEngine ?? { values: {} };
  const values = new Map(Object.entries({ ...commonValues, 'valve_gear.kind': gear, ...first.values }));
  const keys = groupLines(engineParameters, { path: [], values, off: false, lists: 0 });
  const lines = [...HEAD.flatMap((text) => prose(text, '')), ...keys];
  return { text: `${lines.join('\n')}\n`, files: first.files ?? {} };
}

interface Spot {
  readonly path: readonly string[];
  readonly values: ReadonlyMap<string, string>;
  /** Inside something that is left out. */
  readonly off: boolean;
  /** Lists around it: the dash of an entry takes a column more. */
  readonly lists: number;
}

const indentOf = ({ path, lists }: Spot): string => '  '.repeat(path.length + lists);
const below = (spot: Spot, key: string): Spot => ({ ...spot, path: [...spot.path, key] });
const givenAt = ({ path, values }: Spot): string | undefined => values.get(path.join('.'));
const givenBelow = ({ path, values }: Spot): boolean =>
  [...values.keys()].some((key) => key.startsWith(`${path.join('.')}.`));

/** A line of YAML; one that is left out has "#" in its first column. */
const yaml = (spot: Spot, indent: string, text: string): string => `${spot.off ? '#' : ''}${indent}${text}`;

function groupLines(parameters: Parameters, spot: Spot): string[] {
  return Object.entries(parameters).flatMap(([key, parameter]) => [
    ...(spot.path.length === 0 ? [''] : []),
    ...entryLines(key, parameter, below(spot, key), indentOf(spot)),
  ]);
}

function entryLines(key: string, parameter: Parameter, spot: Spot, indent: string): string[] {
  if (parameter.type === 'group') return innerLines(key, parameter, spot, indent);
  if (parameter.type === 'part' || parameter.type === 'part list')
    return partLines(key, parameter, spot, indent);
  if (parameter.type === 'settings') return settingsLines(key, parameter, spot, indent);
  if (parameter.type === 'text list') throw new Error(`no part of an engine takes ${parameter.type}`);
  const leaf = parameter.type === 'optional' ? parameter.parameter : parameter;
  const off = spot.off || (mayBeAbsent(parameter) && givenAt(spot) === undefined);
  return leafLines(key, leaf, { ...spot, off }, indent);
}

/** Never more than an example: whose values they are to be, nobody can guess. */
const settingsLines = (
  key: string,
  { doc, example }: SettingsParameter,
  spot: Spot,
  indent: string,
): string[] => [
  ...prose(doc, indent),
  yaml({ ...spot, off: true }, indent, `${key}: { ${example.join(': ')} }`),
];

function innerLines(key: string, parameter: GroupParameter, spot: Spot, indent: string): string[] {
  const off = spot.off || (parameter.optional === true && !givenBelow(spot));
  const inner = groupLines(parameter.parameters, { ...spot, off });
  // A key with nothing below it would be a mistake.
  const empty = !off && inner.every((line) => /^(#| *#|$)/u.test(line));
  return [...prose(parameter.doc, indent), yaml({ ...spot, off: off || empty }, indent, `${key}:`), ...inner];
}

function leafLines(key: string, parameter: LeafParameter, spot: Spot, indent: string): string[] {
  const preset = presetText(parameter);
  const ifLeftOut = preset === undefined ? '' : ` Left out, it is ${preset}.`;
  const value = givenAt(spot) ?? (parameter.type === 'text' ? '…' : (preset ?? exampleOf(parameter)));
  return [
    ...prose(`${parameter.doc} ${capitalised(expectation(parameter))}.${ifLeftOut}`, indent),
    yaml(spot, indent, `${key}: ${value}`),
  ];
}

function partLines(
  key: string,
  parameter: PartParameter | PartListParameter,
  spot: Spot,
  indent: string,
): string[] {
  const named = spot.values.get(`${spot.path.join('.')}.kind`);
  const kind = chosenKind(parameter, named);
  const off = spot.off || (named === undefined && mayBeAbsent(parameter));
  const own = { ...spot, off };
  const inner = `${indent}  `;
  const others = kindNames(parameter).filter((name) => name !== kind.kind);
  const about = [
    ...prose(parameter.doc, indent),
    yaml(own, indent, `${key}:`),
    ...prose(`"${kind.kind}": ${kind.doc}`, inner),
    ...(others.length === 0
      ? []
      : prose(`Other kinds, with keys of their own (tickover explain ${key}): ${others.join(', ')}.`, inner)),
  ];
  if (parameter.type === 'part')
    return [...about, yaml(own, inner, `kind: ${kind.kind}`), ...groupLines(kind.parameters, own)];
  const entry = { ...own, lists: own.lists + 1 };
  return [...about, yaml(own, inner, `- kind: ${kind.kind}`), ...groupLines(kind.parameters, entry)];
}

function chosenKind(
  parameter: PartParameter | PartListParameter,
  named: string | undefined,
): AnyKind<unknown, unknown> {
  const kinds = kindsOf(parameter);
  const wanted = named ?? (parameter.type === 'part' ? parameter.defaultKind : undefined);
  const found = wanted === undefined ? kinds[0] : kinds.find(({ kind }) => kind === wanted);
  if (found === undefined) throw new Error(`no kind "${wanted ?? ''}" to start from`);
  return found;
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A remark, wrapped; a number stays with its unit. */
function prose(text: string, indent: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/(?<!\d) /u)) {
    if (line !== '' && indent.length + line.length + word.length > WIDTH - 3) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].map((one) => `${indent}# ${one}`);
}
