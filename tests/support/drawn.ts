/** Drawings of engines for tests: files by their names, and shipped scenarios as they are read. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { drawingFiles, readScenario, type EngineSpec } from '../../src/index.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';

export function shippedSpec(name: string): EngineSpec {
  const file = fileURLToPath(new URL(`../../scenarios/${name}`, import.meta.url));
  const reading = readScenario(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(`${name} cannot be read`);
  return reading.spec;
}

/** Texts by file name; throws when there is something to say against the engine or the wish. */
export function drawn(spec: EngineSpec, kerf?: string): ReadonlyMap<string, string> {
  const drawings = drawingFiles(spec, { parts: [], kerf });
  if (!drawings.ok) throw new Error(JSON.stringify(drawings));
  return new Map(drawings.files.map(({ name, text }) => [name, text]));
}

export function fileOf(files: ReadonlyMap<string, string>, name: string): string {
  const text = files.get(name);
  if (text === undefined) throw new Error(`no file ${name}`);
  return text;
}

/** An engine with other values for its valve gear, groups completed. */
export function withGear(spec: EngineSpec, change: Readonly<Record<string, object | number>>): EngineSpec {
  const { values } = spec.valve_gear;
  const changed = Object.fromEntries(
    Object.entries(change).map(([key, own]) => [
      key,
      typeof own === 'object' ? { ...(values[key] as object), ...own } : own,
    ]),
  );
  return { ...spec, valve_gear: rebuilt(spec, { ...values, ...changed }) };
}

function rebuilt(spec: EngineSpec, values: Readonly<Record<string, unknown>>): EngineSpec['valve_gear'] {
  const kind = valveGears.kinds.find((candidate) => candidate.kind === spec.valve_gear.kind);
  if (kind === undefined) throw new Error('no such valve gear');
  return kind.choose(values);
}
