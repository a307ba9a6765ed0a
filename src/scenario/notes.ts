/** What is said about values that are missing or of no known kind. */
import { isMap, isScalar } from 'yaml';
import type { Parameter, PartListParameter, PartParameter } from '../kinds/parameter.ts';
import { exampleOf, expectation, expectedKind, isLeaf, kindNames, mayBeAbsent } from './expectation.ts';
import { didYouMean } from './read-leaf.ts';
import { note, whatIsAt, type Place, type Sheet } from './sheet.ts';

export const keyOf = ({ path }: Place): string => path.at(-1) ?? '';

/** The key is missing, or nothing stands after it. */
export function noteNothing(sheet: Sheet, parameter: Parameter, place: Place): void {
  const hint = mayBeAbsent(parameter)
    ? 'Leave the key out if nothing is to be said.'
    : `${place.given ? 'Write' : 'Add'} ${entry(parameter, keyOf(place))}. ${meaning(parameter)}`;
  note(sheet, place, { expected: expectation(parameter), received: 'nothing', hint });
}

function entry(parameter: Parameter, key: string): string {
  if (isLeaf(parameter)) return `"${key}: ${exampleOf(parameter)}"`;
  if (parameter.type === 'optional') return entry(parameter.parameter, key);
  if (parameter.type === 'text list') return `"${key}: [${parameter.example}]"`;
  return parameter.type === 'part'
    ? `"${key}:" and below it "kind: ${kindNames(parameter)[0] ?? ''}"`
    : `"${key}:"`;
}

const meaning = (parameter: Parameter): string =>
  parameter.type === 'optional' ? parameter.parameter.doc : parameter.doc;

/** A part whose kind is not said, be it a group without "kind" or something else altogether. */
export function noteNoKind(sheet: Sheet, parameter: PartParameter | PartListParameter, place: Place): void {
  const names = kindNames(parameter);
  const word = isScalar(place.node) ? String(place.node.value) : '';
  const kind = names.includes(word) ? word : (names[0] ?? '');
  const received = isMap(place.node) ? 'none' : whatIsAt(place);
  const hint = `Write "kind: ${kind}" on a line of its own.`;
  note(sheet, place, { expected: expectedKind(parameter), received, hint });
}

export function noteUnknownKind(
  sheet: Sheet,
  parameter: PartParameter | PartListParameter,
  place: Place,
  name: string,
): void {
  const names = kindNames(parameter);
  const hint = name === '' ? { hint: `Write "kind: ${names[0] ?? ''}".` } : didYouMean(name, names);
  note(sheet, place, { expected: expectedKind(parameter), received: whatIsAt(place), ...hint });
}
