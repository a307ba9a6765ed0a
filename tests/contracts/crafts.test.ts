/** What every craft of the workshop owes: a known kind, names of its own, and drawings of anything that passes. */
import { describe, expect, it } from 'vitest';
import type { Parameter, Parameters } from '../../src/kinds/parameter.ts';
import { drawingFiles } from '../../src/index.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import { crafts } from '../../src/workshop/crafts/registry.ts';
import { workshopOf } from '../../src/workshop/workshop.ts';
import { filled } from '../support/chosen.ts';
import { referenceSpec } from '../support/reference-engine.ts';
import { samplesOf } from './context.ts';

/** Groups that could have been left out altogether, left out. */
function withDefaults(parameters: Parameters, values: Readonly<Record<string, unknown>>): typeof values {
  const entries = Object.entries(parameters).map(([key, parameter]) => {
    const spare = parameter.type === 'group' && Object.values(parameter.parameters).every(hasDefault);
    return [key, spare ? filled(parameter.parameters, {}) : values[key]] as const;
  });
  return Object.fromEntries(entries);
}

const hasDefault = (parameter: Parameter): boolean => parameter.type === 'optional' || 'default' in parameter;

it('no kind has two crafts', () => {
  const kinds = crafts.map(({ kind }) => kind);
  expect(new Set(kinds).size).toBe(kinds.length);
});

describe.each(crafts)('the craft of the $kind', ({ kind }) => {
  const family = valveGears.kinds.find((own) => own.kind === kind);
  // Random gears as they are, and with the sizes that only a drawing asks for left to their defaults.
  const chosen = family === undefined ? [] : samplesOf(family, 3, 0);
  const specs = chosen
    .flatMap((own) =>
      family === undefined ? [] : [own, family.choose(withDefaults(family.parameters, own.values))],
    )
    .map((valve_gear) => referenceSpec({ valve_gear }));

  it('belongs to a valve gear', () => {
    expect(specs).not.toEqual([]);
  });

  it('draws what can be made, in numbers, and says what cannot', () => {
    const outcomes = specs.map((spec) => {
      const drawings = drawingFiles(spec, { parts: [], kerf: undefined });
      if (!drawings.ok) {
        expect(
          'complaints' in drawings && drawings.complaints.every(({ path }) => path[0] === 'valve_gear'),
        ).toBe(true);
        return 'refused';
      }
      for (const { name, text } of drawings.files) expect(text, name).not.toMatch(/NaN|Infinity|undefined/u);
      return 'drawn';
    });
    expect(outcomes).toContain('drawn');
  });

  it('gives every part a name that makes a file, and says what it is', () => {
    for (const spec of specs) {
      const { parts } = workshopOf(spec);
      const ids = parts.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const { id, name, stock, notes } of parts) {
        expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/u);
        expect([name, stock, ...notes].every((text) => text.trim().length > 3)).toBe(true);
      }
    }
  });
});
