/** The engine's own description: what it offers as examples and defaults must be readable and allowed. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { LeafParameter, Parameter, Parameters } from '../../../src/kinds/parameter.ts';
import { engineParameters } from '../../../src/parts/engine-description.ts';
import { exampleOf, isLeaf, kindsOf } from '../../../src/scenario/expectation.ts';
import { scenarioJsonSchema } from '../../../src/scenario/json-schema.ts';
import { readLeaf } from '../../../src/scenario/read-leaf.ts';
import { readScenario } from '../../../src/scenario/read-scenario.ts';

type Named = readonly [path: string, parameter: LeafParameter];

function leaves(parameters: Parameters, prefix = ''): Named[] {
  return Object.entries(parameters).flatMap(([key, parameter]) => leavesOf(parameter, prefix + key));
}

function leavesOf(parameter: Parameter, path: string): Named[] {
  if (isLeaf(parameter)) return [[path, parameter]];
  if (parameter.type === 'optional') return [[path, parameter.parameter]];
  if (parameter.type === 'text list') return [];
  if (parameter.type === 'group') return leaves(parameter.parameters, `${path}.`);
  if (parameter.type === 'settings') return [];
  return kindsOf(parameter).flatMap(({ kind, parameters }) => leaves(parameters, `${path} (${kind}).`));
}

const all = leaves(engineParameters);

describe('every parameter of an engine', () => {
  it.each(all)('%s: its example is valid', (_path, parameter) => {
    expect(readLeaf(parameter, exampleOf(parameter), 101_325)).toMatchObject({ ok: true });
  });

  const withDefault = all.filter(([, { type }]) => type === 'quantity' || type === 'number');
  it.each(withDefault)('%s: its default lies within its range', (_path, parameter) => {
    const value = 'default' in parameter ? parameter.default : undefined;
    const { min, max } = parameter as { min: number; max: number };
    expect(min).toBeLessThan(max);
    expect(value === undefined || (Number(value) >= min && Number(value) <= max)).toBe(true);
  });
});

describe('the JSON Schema of an engine', () => {
  const schema = scenarioJsonSchema(engineParameters, 'An engine');

  it('knows what is required and closes every group', () => {
    expect(schema).toMatchObject({ type: 'object', title: 'An engine', additionalProperties: false });
    expect(schema['required']).toEqual([
      'title',
      'cylinder',
      'flywheel',
      'friction',
      'load',
      'valve_gear',
      'supply',
    ]);
  });

  it('has patterns that let examples and defaults pass and nothing without a unit', () => {
    const patterns = textSchemas(schema);
    expect(patterns.length).toBeGreaterThan(30);
    for (const { pattern, examples, default: preset } of patterns) {
      const matcher = new RegExp(pattern, 'u');
      for (const text of [...examples, ...(preset === undefined ? [] : [preset])])
        expect(text).toMatch(matcher);
      for (const text of ['5', '5,5 mm', 'wide']) expect(text).not.toMatch(matcher);
    }
  });

  it('names every kind', () => {
    expect(JSON.stringify(schema)).toContain('{"const":"cam-driven spools"}');
  });
});

interface TextSchema {
  readonly pattern: string;
  readonly examples: readonly string[];
  readonly default?: string;
}

function textSchemas(node: unknown): TextSchema[] {
  if (typeof node !== 'object' || node === null) return [];
  const own = 'pattern' in node && 'examples' in node ? [node as TextSchema] : [];
  return [...own, ...Object.values(node).flatMap(textSchemas)];
}

describe('a whole engine', () => {
  const sound = readFileSync(new URL('../../messages/geometry.yaml', import.meta.url), 'utf8').replace(
    'rod_length: 20 mm',
    'rod_length: 120 mm',
  );

  it('is read into SI values with its parts bound', () => {
    const reading = readScenario(sound, 'press.yaml');
    if (!reading.ok) throw new Error('not readable');
    expect(reading.source.file).toBe('press.yaml');
    expect(reading.spec.cylinder).toMatchObject({ bore: 0.05, stroke: 0.06, clearance: 0.08 });
    expect(reading.spec.supply.pressure).toBeCloseTo(501_325, 6);
    expect(reading.spec.load).toMatchObject({ kind: 'constant', values: { torque: 2 } });
    expect(reading.spec.valve_gear.values).toMatchObject({
      admission: { closes: { by: 'outward stroke', fraction: 0.5 }, clearance: { by: 'gap', gap: 8e-6 } },
    });
  });
});
