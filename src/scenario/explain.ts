/** What a key of a scenario means, in words: for people who ask for one key and not for the whole list. */
import type { Parameter, Parameters } from '../kinds/parameter.ts';
import { inUnits, unitSystem, type UnitSystem } from '../quantity/unit-system.ts';
import { describedKeys, type DescribedKey } from './described-keys.ts';
import { exampleOf, expectation, isLeaf, kindsOf, mayBeAbsent, presetText } from './expectation.ts';
import { nearest } from './nearest.ts';

/** A key, or several that mean the same. */
export interface KeyExplanation {
  /** Dotted, from the top of the file: "valve_gear.admission.opens". */
  readonly paths: readonly string[];
  /** The kinds of part that have it; empty if it is always there. */
  readonly kinds: readonly string[];
  readonly meaning: string;
  /** "a length from 2 mm to 500 mm" */
  readonly expected: string;
  /** What is taken if it is left out, or that it must be given. */
  readonly leftOut: string;
  /** A value as one would write it. */
  readonly example?: string;
  /** How to find it out on a real engine. */
  readonly measure?: string;
  /** Keys of a group, or kinds of a part, with what they are. */
  readonly members: readonly (readonly [name: string, meaning: string])[];
}

/** What is known of a key, or that there is none such. */
export type Explaining =
  | { readonly ok: true; readonly explanations: readonly KeyExplanation[] }
  /** The known key that comes nearest, if one does. */
  | { readonly ok: false; readonly nearest?: string };

/**
 * Explains a key by its last part or more of its path ("bore", "cylinder.bore"), or a kind of part by its name
 * ("rotary disc"). Without a key: the keys at the top of a scenario.
 */
export function explainKey(
  parameters: Parameters,
  key: string | undefined,
  units: UnitSystem = unitSystem(),
): Explaining {
  return inUnits(units, () =>
    key === undefined ? explainTop(parameters) : explainOne(parameters, key.trim()),
  );
}

const explainTop = (parameters: Parameters): Explaining => ({
  ok: true,
  explanations: [
    {
      paths: [],
      kinds: [],
      meaning: 'The keys at the top of a scenario.',
      expected: 'a group of keys',
      leftOut: 'must be given',
      members: membersOf({ type: 'group', parameters, doc: '' }),
    },
  ],
});

function explainOne(parameters: Parameters, key: string): Explaining {
  const all = describedKeys(parameters);
  // A number in a path counts entries of a list: "leaks.0.clearance".
  const wanted = key.split('.').filter((part) => !/^\d+$/u.test(part));
  const found = all.filter(({ path }) => wanted.every((part, i) => path.at(i - wanted.length) === part));
  const explained = [...kindsCalled(all, key), ...merged(found.map(explanationOf))];
  if (explained.length > 0) return { ok: true, explanations: explained };
  const known = [...new Set(all.flatMap(({ path }) => [path.join('.'), path.at(-1) ?? '']))];
  const candidate = nearest(key, known);
  return candidate === undefined ? { ok: false } : { ok: false, nearest: candidate };
}

function kindsCalled(all: readonly DescribedKey[], name: string): KeyExplanation[] {
  return all.flatMap(({ path, parameter }) => {
    if (parameter.type !== 'part' && parameter.type !== 'part list') return [];
    return kindsOf(parameter)
      .filter(({ kind }) => kind === name)
      .map((kind): KeyExplanation => ({
        paths: [`${path.join('.')} (kind: ${kind.kind})`],
        kinds: [],
        meaning: kind.doc,
        expected: 'a group of keys',
        leftOut: 'see its keys',
        example: `kind: ${kind.kind}`,
        members: membersOf({ type: 'group', parameters: kind.parameters, doc: '' }),
      }));
  });
}

function explanationOf({ path, kinds, parameter }: DescribedKey): KeyExplanation {
  const own = parameter.type === 'optional' ? parameter.parameter : parameter;
  const example = isLeaf(own) && own.type !== 'text' ? `${path.at(-1) ?? ''}: ${exampleOf(own)}` : undefined;
  const measure = 'measure' in own ? own.measure : undefined;
  return {
    paths: [path.join('.')],
    kinds,
    meaning: own.doc,
    expected: expectation(own),
    leftOut: leftOut(parameter),
    ...(example === undefined ? {} : { example }),
    ...(measure === undefined ? {} : { measure }),
    members: membersOf(own),
  };
}

function leftOut(parameter: Parameter): string {
  if (isLeaf(parameter)) return presetText(parameter) ?? 'must be given';
  if (parameter.type === 'optional') return 'see the meaning';
  if (parameter.type === 'part' && parameter.defaultKind !== undefined)
    return `kind: ${parameter.defaultKind}`;
  return mayBeAbsent(parameter) ? 'may be left out' : 'must be given';
}

function membersOf(parameter: Parameter): KeyExplanation['members'] {
  if (parameter.type === 'group')
    return Object.entries(parameter.parameters).map(([key, own]) => [
      key,
      own.type === 'optional' ? own.parameter.doc : own.doc,
    ]);
  if (parameter.type !== 'part' && parameter.type !== 'part list') return [];
  return kindsOf(parameter).map(({ kind, doc }) => [kind, doc]);
}

/** Keys with the same words are told once. */
function merged(explanations: readonly KeyExplanation[]): KeyExplanation[] {
  const byWords = new Map<string, KeyExplanation>();
  for (const own of explanations) {
    const words = JSON.stringify([own.meaning, own.expected, own.leftOut, own.measure, own.members]);
    const known = byWords.get(words);
    const union = (a: readonly string[] = [], b: readonly string[]): string[] => [...new Set([...a, ...b])];
    byWords.set(words, {
      ...(known ?? own),
      paths: union(known?.paths, own.paths),
      kinds: union(known?.kinds, own.kinds),
    });
  }
  return [...byWords.values()];
}
