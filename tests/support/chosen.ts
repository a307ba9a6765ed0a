/** Parts for tests, chosen from a family by name, with the defaults of their parameters filled in. */
import type { Chosen, Family } from '../../src/kinds/kind.ts';
import type { Parameter, Parameters } from '../../src/kinds/parameter.ts';

type Given = Readonly<Record<string, unknown>>;

/** The value of a parameter that is not given, as the scenario reader would fill it in. */
function absent(key: string, parameter: Parameter): unknown {
  switch (parameter.type) {
    case 'optional':
      return undefined;
    case 'part list':
      return [];
    case 'part': {
      if (parameter.defaultKind === undefined) break;
      return chosen(parameter.family as Family<unknown, unknown>, parameter.defaultKind, {});
    }
    case 'group':
      return parameter.optional ? undefined : filled(parameter.parameters, {});
    case 'formula':
    case 'table':
    case 'readings':
    case 'clearance':
    case 'text list':
    case 'settings':
      break;
    case 'quantity':
    case 'number':
    case 'count':
    case 'choice':
    case 'text':
    case 'crank position':
      if (parameter.default !== undefined) return parameter.default;
  }
  throw new Error(`"${key}" has no default and must be given`);
}

/** Values with the missing ones filled in; groups are completed key by key. */
export function filled(parameters: Parameters, given: Given): Given {
  const unknown = Object.keys(given).filter((key) => !(key in parameters));
  if (unknown.length > 0) throw new Error(`no such parameter: ${unknown.join(', ')}`);
  const entries = Object.entries(parameters).map(([key, parameter]) => {
    const value = given[key];
    if (value === undefined) return [key, absent(key, parameter)];
    return [key, parameter.type === 'group' ? filled(parameter.parameters, value as Given) : value];
  });
  return Object.fromEntries(entries) as Given;
}

/** A kind with its values. */
export function chosen<Context, Part>(
  family: Family<Context, Part>,
  kind: string,
  given: Given,
): Chosen<Context, Part> {
  const found = family.kinds.find((candidate) => candidate.kind === kind);
  if (found === undefined) throw new Error(`no ${family.name} is registered as "${kind}"`);
  return found.choose(filled(found.parameters, given));
}
