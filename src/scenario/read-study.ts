/**
 * A study from the text of its file, checked together with the engine it is about: every path leads somewhere, every
 * value can be read. What only the combination of values forbids is no mistake here; such an engine is a row of the study
 * with its reason.
 */
import type { Complaint } from '../kinds/kind.ts';
import { settingsAt } from '../study/plan.ts';
import { studyComplaints, studyParameters, type StudySpec } from '../study/study-description.ts';
import type { Variation } from '../study/variations/variation.ts';
import { pathBeside, type Attachment, type Attachments } from './attachments.ts';
import { locate } from './locate.ts';
import { pathOf, type Override } from './override.ts';
import { inFileOrder, problemText, type Problem, type Whereabouts } from './problem.ts';
import { readSource } from './read-description.ts';
import { scenarioReader, type ScenarioReader } from './read-scenario.ts';
import { openSource, type Source } from './source.ts';

type Reader = Extract<ScenarioReader, { readonly ok: true }>;

/** A study whose every path and value can be read. */
export interface Study {
  readonly spec: StudySpec;
  /** The scenario that is varied: its file and its text. */
  readonly file: string;
  readonly text: string;
  readonly reader: Reader;
  /** What every engine has instead of what the scenario says. */
  readonly shared: readonly Override[];
}

/** A study, or all that is wrong with it and its engine. */
export type StudyReading =
  | { readonly ok: true; readonly study: Study }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What a study needs from around its file. */
export interface StudySurroundings {
  /** Text of a scenario by the path from the current folder. */
  readonly scenario: (path: string) => Attachment;
  /** Tables that the scenario of that path names. */
  readonly tables: (scenarioPath: string) => Attachments;
  /** Said beside the study for every engine. */
  readonly overrides: readonly Override[];
}

/** Where a study says something: by path of keys in its file, or by an option. */
export type Places = (path: readonly string[]) => Whereabouts;

/** Whether a text describes a study; anything else is taken for the scenario of an engine. */
export function isStudy(text: string, file: string): boolean {
  const opened = openSource(text, file);
  return opened.ok && locate(opened.source, ['engine']).depth === 1;
}

/** Reads a study file and checks it together with the scenario of its engine. */
export function readStudy(text: string, file: string, surroundings: StudySurroundings): StudyReading {
  const opened = openSource(text, file);
  if (!opened.ok) return opened;
  const reading = readSource(opened.source, studyParameters);
  if (!reading.ok) return reading;
  const { source } = opened;
  const places: Places = (path) => source.at(locate(source, path).offset);
  const complaints = studyComplaints(reading.values).map((own) => problemAt(own, places));
  if (complaints.length > 0) return { ok: false, problems: inFileOrder(complaints) };
  const engine = pathBeside(file, reading.values.engine);
  const scenario = surroundings.scenario(engine);
  if (!scenario.ok)
    return { ok: false, problems: [noEngine(reading.values.engine, scenario.reason, source)] };
  return checkedStudy(reading.values, { file: engine, text: scenario.text }, places, surroundings);
}

function noEngine(engine: string, reason: string, source: Source): Problem {
  const at = source.at(locate(source, ['engine']).offset);
  return {
    ...at,
    path: ['engine'],
    expected: 'a scenario file, its path from here',
    received: `"${engine}" (${reason})`,
  };
}

const problemAt = (complaint: Complaint, places: Places): Problem => ({
  ...places(complaint.path),
  ...complaint,
});

/** A study and its engine together. */
export function checkedStudy(
  spec: StudySpec,
  { file, text }: { readonly file: string; readonly text: string },
  places: Places,
  { tables, overrides }: StudySurroundings,
): StudyReading {
  const reader = scenarioReader(text, file, tables(file));
  if (!reader.ok) return reader;
  const shared: readonly Override[] = [...spec.set, ...overrides];
  const study: Study = { spec, file, text, reader, shared };
  const base = unreadable(reader, shared);
  if (base.length > 0) return { ok: false, problems: base };
  const problems = [
    ...variedProblems(study, places),
    ...limitProblems(study, places),
    ...toleranceProblems(study, places),
  ];
  const distinct = [...new Map(problems.map((own) => [problemText(own), own])).values()];
  return distinct.length > 0 ? { ok: false, problems: inFileOrder(distinct) } : { ok: true, study };
}

/** What cannot be read of an engine; combinations that cannot be are not meant. */
function unreadable(reader: Reader, overrides: readonly Override[]): readonly Problem[] {
  const reading = reader.read(overrides);
  return reading.ok || reading.impossible === true ? [] : reading.problems;
}

/** Each value once, the others at their first; of a list, with those beside it. */
function variedProblems({ spec, reader, shared }: Study, places: Places): readonly Problem[] {
  const variations = spec.vary.map((own) => own.build(null));
  const wrongPaths = variations.flatMap((own, i) => pathProblems(own.paths, ['vary', String(i)], places));
  if (wrongPaths.length > 0) return wrongPaths;
  const together = spec.sample.kind === 'list';
  return variations.flatMap((own, i) =>
    levelsToTry(own).flatMap((level) => {
      const levels = variations.map((_, k) => (k === i || together ? level : 0));
      const varied = variations.flatMap((other, k) =>
        overridesOf(other, levels[k] ?? 0, ['vary', String(k)], places),
      );
      return unreadable(reader, [...shared, ...varied]);
    }),
  );
}

const levelsToTry = ({ range, count }: Variation): readonly number[] =>
  range ? [0, count - 1] : Array.from({ length: count }, (_, i) => i);

function overridesOf(
  variation: Variation,
  level: number,
  path: readonly string[],
  places: Places,
): Override[] {
  const end = level === 0 ? 'from' : 'to';
  const at = places(variation.range ? [...path, end] : [...path, 'values', String(level)]);
  return settingsAt([variation], [variation.level(level)]).map((own) => ({
    path: own.path.split('.'),
    value: own.value,
    at,
  }));
}

function pathProblems(paths: readonly string[], at: readonly string[], places: Places): readonly Problem[] {
  return paths.flatMap((path, i) => {
    if (pathOf(path) !== undefined) return [];
    const where = [...at, ...(i === 0 ? ['setting'] : ['also', String(i - 1)])];
    return [
      { ...places(where), path: where, expected: 'a path such as leaks.0.clearance', received: `"${path}"` },
    ];
  });
}

function limitProblems({ spec: { limit }, reader, shared }: Study, places: Places): readonly Problem[] {
  if (limit === undefined) return [];
  const paths = [limit.setting, ...limit.also];
  const wrong = pathProblems(paths, ['limit'], places);
  if (wrong.length > 0) return wrong;
  return (['from', 'to'] as const).flatMap((end) => {
    const at = places(['limit', end]);
    return unreadable(reader, [
      ...shared,
      ...paths.map((path) => ({ path: path.split('.'), value: limit[end], at })),
    ]);
  });
}

/** A tolerance needs a value to stray from: that of the scenario or of the study. */
function toleranceProblems({ spec, reader, shared }: Study, places: Places): readonly Problem[] {
  const variations = spec.vary.map((own) => own.build(null));
  const given = new Set(reader.given(shared).map(({ path }) => path));
  return (spec.odds?.tolerances ?? []).flatMap((chosen, i) => {
    const at = ['odds', 'tolerances', String(i)];
    const tolerance = chosen.build(null);
    const wrong = pathProblems([tolerance.path], at, places);
    if (wrong.length > 0) return wrong;
    const varied = variations.find(({ paths }) => paths.includes(tolerance.path));
    const texts = varied
      ? levelsToTry(varied).map(varied.level)
      : given.has(tolerance.path)
        ? [reader.textAt(shared, tolerance.path.split('.')) ?? '']
        : [];
    const path = [...at, 'setting'];
    if (texts.length === 0)
      return [
        {
          ...places(path),
          path,
          expected: 'a value that the scenario gives',
          received: `"${tolerance.path}", which it does not`,
        },
      ];
    return texts.flatMap((text) => {
      const strayed = tolerance.stray({ text, diameter: 0.012 }, () => 0.5);
      return strayed.ok
        ? []
        : [{ ...places(path), path, expected: strayed.expected, received: strayed.received }];
    });
  });
}
