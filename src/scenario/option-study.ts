/**
 * A study that is said on the command line: the scenario of an engine and what varies, "cylinder.bore = 40 mm to 60 mm
 * in 5" or "leaks.0.clearance = 10 um, 20 um, 40 um".
 */
import type { AnyKind, Chosen, Family } from '../kinds/kind.ts';
import { samples } from '../study/samples/registry.ts';
import type { StudySpec } from '../study/study-description.ts';
import { studyComplaints } from '../study/study-description.ts';
import { variations } from '../study/variations/registry.ts';
import { pathOf } from './override.ts';
import { inFileOrder, quoted, type Problem, type Whereabouts } from './problem.ts';
import { checkedStudy, type Places, type StudyReading, type StudySurroundings } from './read-study.ts';

interface Engine {
  readonly file: string;
  readonly text: string;
}

/** The study that options such as `--vary "cylinder.bore = 40 mm to 60 mm in 5"` describe. */
export function optionStudy(
  engine: Engine,
  varied: readonly string[],
  surroundings: StudySurroundings,
  option = '--vary',
): StudyReading {
  const at = varied.map((text): Whereabouts => ({
    file: '',
    line: 0,
    column: 0,
    option: `${option} ${text}`,
  }));
  const read = varied.map(variationFrom);
  const problems = read.flatMap((own, i) => (own === undefined ? [noVariation(varied[i] ?? '', at[i])] : []));
  if (problems.length > 0) return { ok: false, problems };
  const spec: StudySpec = {
    title: engine.file,
    notes: '',
    engine: engine.file,
    set: [],
    vary: read.flatMap((own) => own ?? []),
    sample: chosen(samples, 'grid', {}),
    conditions: [],
    best: undefined,
    limit: undefined,
    odds: undefined,
  };
  const places: Places = ([, index]) => at[Number(index)] ?? { file: engine.file, line: 1, column: 1 };
  const complaints = studyComplaints(spec).map((own): Problem => ({ ...places(own.path), ...own }));
  if (complaints.length > 0) return { ok: false, problems: inFileOrder(complaints) };
  return checkedStudy(spec, engine, places, surroundings);
}

function chosen<C, P>(
  { kinds }: Family<C, P>,
  name: string,
  values: Readonly<Record<string, unknown>>,
): Chosen<C, P> {
  const kind: AnyKind<C, P> | undefined = kinds.find((own) => own.kind === name);
  if (kind === undefined) throw new Error(`there is no kind "${name}"`);
  return kind.choose(values);
}

const rangeForm = /^(.+?)\s+to\s+(.+?)(?:\s+in\s+(\d+))?$/u;
const POINTS = 11;

function variationFrom(text: string): StudySpec['vary'][number] | undefined {
  const equals = text.indexOf('=');
  const setting = text.slice(0, equals).trim();
  const said = text.slice(equals + 1).trim();
  if (equals < 0 || pathOf(setting) === undefined || said === '') return undefined;
  const also: readonly string[] = [];
  const [, from, to, points] = rangeForm.exec(said) ?? [];
  if (from !== undefined && to !== undefined) {
    const count = points === undefined ? POINTS : Number(points);
    if (count < 2 || count > 100_000) return undefined;
    return chosen(variations, 'range', { setting, also, from, to, points: count, spacing: 'even' });
  }
  const values = said.split(',').map((own) => own.trim());
  return values.includes('') ? undefined : chosen(variations, 'values', { setting, also, values });
}

function noVariation(text: string, at: Whereabouts | undefined): Problem {
  return {
    ...(at ?? { file: '', line: 0, column: 0 }),
    path: [],
    expected: 'a path and what it takes',
    received: quoted(text),
    hint: 'Write "cylinder.bore = 40 mm to 60 mm in 5" or "leaks.0.clearance = 10 um, 20 um".',
  };
}
