/** A value that is said beside a scenario file and stands above what the file says: `cylinder.bore=60 mm`. */
import { quoted, type Problem, type Whereabouts } from './problem.ts';

/** One value said beside a scenario. */
export interface Override {
  /** Keys from the top of the scenario inwards, the places of lists counted from 0: ["leaks", "0", "clearance"]. */
  readonly path: readonly string[];
  /** As one would write it in the file. */
  readonly value: string;
  /** Where messages about it point. */
  readonly at: Whereabouts;
}

/** The values that options say, or what is wrong with the options. */
export type OverridesReading =
  | { readonly ok: true; readonly overrides: readonly Override[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What the options `--set path=value` say, in their order; a later one replaces an earlier one. */
export function optionOverrides(texts: readonly string[], option = '--set'): OverridesReading {
  const read = texts.map((text) => optionOverride(text, `${option} ${text}`));
  const problems = read.flatMap((own) => (own.ok ? [] : own.problems));
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, overrides: read.flatMap((own) => (own.ok ? own.overrides : [])) };
}

function optionOverride(text: string, option: string): OverridesReading {
  const at: Whereabouts = { file: '', line: 0, column: 0, option };
  const equals = text.indexOf('=');
  const path = equals < 0 ? undefined : pathOf(text.slice(0, equals));
  if (path !== undefined)
    return { ok: true, overrides: [{ path, value: text.slice(equals + 1).trim(), at }] };
  const hint = 'Write it like "cylinder.bore=50 mm".';
  return {
    ok: false,
    problems: [{ ...at, path: [], expected: 'path=value', received: quoted(text), hint }],
  };
}

/** A value that the program itself says, of a path that has been one before. */
export const settingOverride = ({
  path,
  value,
}: {
  readonly path: string;
  readonly value: string;
}): Override => ({
  path: path.split('.'),
  value,
  at: { file: '', line: 0, column: 0, option: `${path}=${value}` },
});

const longest = 300;

/** The keys of "leaks.0.clearance"; `undefined` when it is no such path. */
export function pathOf(text: string): readonly string[] | undefined {
  const keys = text.trim().split('.');
  return text.length <= longest && keys.every((key) => /^\w+$/u.test(key)) ? keys : undefined;
}
