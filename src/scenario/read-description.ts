/**
 * A file against a description: walks both trees together and gathers everything that is wrong.
 *
 * A reader that finds a problem notes it and returns `undefined`; values are handed out only if nothing was noted.
 */
import { isMap, isScalar, isSeq, type Node, type YAMLMap } from 'yaml';
import type { AnyKind } from '../kinds/kind.ts';
import type {
  GroupParameter,
  LeafParameter,
  Parameter,
  Parameters,
  PartListParameter,
  PartParameter,
  Values,
} from '../kinds/parameter.ts';
import { noAttachments, type Attachments } from './attachments.ts';
import { atmosphereOf, isAtmosphericPressure } from './atmosphere.ts';
import { exampleOf, expectation, isLeaf, kindsOf, mayBeAbsent, presetOf } from './expectation.ts';
import type { KnownValues } from './known-values.ts';
import { keyOf, noteNoKind, noteNothing, noteUnknownKind } from './notes.ts';
import { inFileOrder, type Problem } from './problem.ts';
import { noEntries, readKeys, type Entries } from './read-keys.ts';
import { readLeaf } from './read-leaf.ts';
import { readReadings } from './read-readings.ts';
import { readSettings } from './read-settings.ts';
import { readTable } from './read-table.ts';
import { readTextList } from './read-text-list.ts';
import { note, placeOf, whatIsAt, type Place, type Sheet } from './sheet.ts';
import { openSource, startOf, type Source } from './source.ts';

export type Reading<V> =
  | { readonly ok: true; readonly values: V; readonly source: Source }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function readDescription<const P extends Parameters>(
  text: string,
  file: string,
  parameters: P,
  attachments: Attachments = noAttachments,
): Reading<Values<P>> {
  const opened = openSource(text, file);
  return opened.ok ? readSource(opened.source, parameters, attachments) : opened;
}

/** `known` is kept by whoever reads the same file several times. */
export function readSource<const P extends Parameters>(
  source: Source,
  parameters: P,
  attachments: Attachments = noAttachments,
  known: KnownValues = new WeakMap(),
): Reading<Values<P>> {
  const atmosphere = atmosphereOf(source, parameters, known);
  const sheet: Sheet = { source, atmosphere, attachments, problems: [], known };
  const top = placeOf(sheet, [], startOf(source.root), source.root);
  const values = readGroup(sheet, { type: 'group', parameters, doc: '' }, top);
  if (sheet.problems.length > 0) return { ok: false, problems: inFileOrder(sheet.problems) };
  // Every value has been checked against its own parameter; this is the one place that says so to the compiler.
  return { ok: true, values: values as Values<P>, source };
}

type Group = Readonly<Record<string, unknown>> | undefined;

function readValue(sheet: Sheet, parameter: Parameter, place: Place): unknown {
  const { node } = place;
  if (node === undefined) return readAnew(sheet, parameter, place);
  const { atmosphere, known, problems } = sheet;
  const before = known.get(node);
  if (before?.parameter === parameter && before.atmosphere === atmosphere) return before.value;
  const value = readAnew(sheet, parameter, place);
  if (problems.length === 0) known.set(node, { parameter, atmosphere, value });
  return value;
}

function readAnew(sheet: Sheet, parameter: Parameter, place: Place): unknown {
  if (place.given ? place.node === undefined : !mayBeAbsent(parameter)) {
    noteNothing(sheet, parameter, place);
    return undefined;
  }
  if (isLeaf(parameter)) return place.given ? readScalar(sheet, parameter, place) : presetOf(parameter);
  switch (parameter.type) {
    case 'group':
      return readGroup(sheet, parameter, place);
    case 'part':
      return readPart(sheet, parameter, place);
    case 'part list':
      return readPartList(sheet, parameter, place);
    case 'text list':
      return readTextList(sheet, parameter, place);
    case 'settings':
      return place.given ? readSettings(sheet, parameter, place) : [];
    case 'optional':
      return place.given ? readScalar(sheet, parameter.parameter, place) : undefined;
  }
}

function readScalar(sheet: Sheet, parameter: LeafParameter, place: Place): unknown {
  const expected = expectation(parameter);
  if (!isScalar(place.node)) {
    const hint = `Write "${keyOf(place)}: ${exampleOf(parameter)}".`;
    note(sheet, place, { expected, received: whatIsAt(place), hint });
    return undefined;
  }
  const atmosphere = isAtmosphericPressure(place.path) ? undefined : sheet.atmosphere;
  const reading = readLeaf(parameter, String(place.node.value), atmosphere);
  if (reading.ok) {
    if (parameter.type === 'table') return readTable(sheet, parameter, place, String(reading.value));
    if (parameter.type === 'readings') return readReadings(sheet, parameter, place, String(reading.value));
    return reading.value;
  }
  const reason = reading.reason === undefined ? '' : ` (${reading.reason})`;
  const hint = reading.hint === undefined ? {} : { hint: reading.hint };
  note(sheet, place, { expected, received: whatIsAt(place) + reason, ...hint });
  return undefined;
}

function readGroup(sheet: Sheet, parameter: GroupParameter, place: Place): Group {
  const { parameters } = parameter;
  if (!place.given && parameter.optional === true) return undefined;
  if (place.node !== undefined && !isMap(place.node)) {
    note(sheet, place, { expected: expectation(parameter), received: whatIsAt(place) });
    return undefined;
  }
  const keys = Object.keys(parameters);
  const entries = place.node === undefined ? noEntries : readKeys(sheet, place.node, place, keys);
  return readEntries(sheet, parameters, entries, place);
}

function readEntries(sheet: Sheet, parameters: Parameters, { places, meant }: Entries, within: Place): Group {
  const values = Object.entries(parameters).map(([key, parameter]) => {
    const absent: Place = {
      path: [...within.path, key],
      offset: within.offset,
      given: false,
      node: undefined,
    };
    const place = places.get(key) ?? absent;
    if (!place.given && meant.has(key)) return [key, undefined] as const;
    return [key, readValue(sheet, parameter, place)] as const;
  });
  return Object.fromEntries(values);
}

function readPart(sheet: Sheet, parameter: PartParameter | PartListParameter, place: Place): unknown {
  if (!place.given) {
    const preset = parameter.type === 'part' ? parameter.defaultKind : undefined;
    return chosen(sheet, kindNamed(parameter, preset), noEntries, place);
  }
  const kindPlace = isMap(place.node) ? placeOfKind(sheet, place.node, place) : undefined;
  if (!isMap(place.node) || kindPlace === undefined) {
    noteNoKind(sheet, parameter, place);
    return undefined;
  }
  const name = isScalar(kindPlace.node) ? String(kindPlace.node.value) : '';
  const kind = kindNamed(parameter, name);
  if (kind === undefined) {
    noteUnknownKind(sheet, parameter, kindPlace, name);
    return undefined;
  }
  const keys = ['kind', ...Object.keys(kind.parameters)];
  return chosen(sheet, kind, readKeys(sheet, place.node, place, keys), place);
}

function placeOfKind(sheet: Sheet, map: YAMLMap, within: Place): Place | undefined {
  const pair = map.items.find(({ key }) => isScalar(key) && key.value === 'kind');
  if (pair === undefined) return undefined;
  return placeOf(sheet, [...within.path, 'kind'], startOf(pair.key as Node), pair.value as Node | null);
}

type Kind = AnyKind<unknown, unknown>;

const kindNamed = (
  parameter: PartParameter | PartListParameter,
  name: string | undefined,
): Kind | undefined => kindsOf(parameter).find(({ kind }) => kind === name);

function chosen(sheet: Sheet, kind: Kind | undefined, entries: Entries, place: Place): unknown {
  const values = readEntries(sheet, kind?.parameters ?? {}, entries, place);
  return sheet.problems.length > 0 ? undefined : kind?.choose(values ?? {});
}

function readPartList(sheet: Sheet, parameter: PartListParameter, place: Place): unknown {
  if (!place.given) return [];
  const { node } = place;
  if (!isSeq<Node>(node) || node.items.length > parameter.maxLength) {
    const received = isSeq(node) ? `${node.items.length} entries` : whatIsAt(place);
    note(sheet, place, { expected: expectation(parameter), received });
    return undefined;
  }
  return node.items.map((item, index) => {
    const itemPlace = placeOf(sheet, [...place.path, String(index)], startOf(item), item);
    return readPart(sheet, parameter, itemPlace);
  });
}
