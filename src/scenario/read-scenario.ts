/** An engine from the text of its scenario file. */
import type { Complaint } from '../kinds/kind.ts';
import { engineComplaints, engineParameters, type EngineSpec } from '../parts/engine-description.ts';
import type { Attachments } from './attachments.ts';
import { givenValues, textIn, type GivenValue } from './given-values.ts';
import type { KnownValues } from './known-values.ts';
import { locate } from './locate.ts';
import { inFileOrder, problemListing, type Problem } from './problem.ts';
import type { Override } from './override.ts';
import { readSource } from './read-description.ts';
import { openSource, type Source } from './source.ts';
import { withOverrides } from './with-overrides.ts';

/** An engine that can be, with the file it was read from; or everything that is wrong with the file, in its order. */
export type ScenarioReading =
  | { readonly ok: true; readonly spec: EngineSpec; readonly source: Source }
  | {
      readonly ok: false;
      readonly problems: readonly Problem[];
      /** Each value by itself could be; together they make no engine. */
      readonly impossible?: boolean;
    };

/**
 * `attachments` hands over the tables that the file names; without it there are none to be had. `overrides` are said
 * beside the file and stand above it.
 */
export function readScenario(
  text: string,
  file: string,
  attachments?: Attachments,
  overrides: readonly Override[] = [],
): ScenarioReading {
  const reader = scenarioReader(text, file, attachments);
  return reader.ok ? reader.read(overrides) : reader;
}

/** Reads one file again and again, each time with other values in place of its own. */
export type ScenarioReader =
  | {
      readonly ok: true;
      readonly read: (overrides: readonly Override[]) => ScenarioReading;
      /** The text that stands at a path, be it the file's or an override's. */
      readonly textAt: (overrides: readonly Override[], path: readonly string[]) => string | undefined;
      /** Every value that the file and the overrides give. */
      readonly given: (overrides: readonly Override[]) => readonly GivenValue[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Opens a scenario once, to read it again and again with other values in place of its own. */
export function scenarioReader(text: string, file: string, attachments?: Attachments): ScenarioReader {
  const opened = openSource(text, file);
  if (!opened.ok) return opened;
  const known: KnownValues = new WeakMap();
  const read = (overrides: readonly Override[]): ScenarioReading => {
    const replaced = withOverrides(opened.source, overrides);
    return replaced.ok ? readChecked(replaced.source, attachments, known) : replaced;
  };
  const textAt = (overrides: readonly Override[], path: readonly string[]): string | undefined => {
    const replaced = withOverrides(opened.source, overrides);
    return replaced.ok ? textIn(replaced.source, path) : undefined;
  };
  const given = (overrides: readonly Override[]): readonly GivenValue[] => {
    const replaced = withOverrides(opened.source, overrides);
    return replaced.ok ? givenValues(replaced.source, engineParameters) : [];
  };
  return { ok: true, read, textAt, given };
}

function readChecked(
  opened: Source,
  attachments: Attachments | undefined,
  known: KnownValues,
): ScenarioReading {
  const reading = readSource(opened, engineParameters, attachments, known);
  if (!reading.ok) return reading;
  const { values: spec, source } = reading;
  const problems = engineComplaints(spec).map((complaint) => complaintProblem(complaint, source));
  return problems.length > 0
    ? { ok: false, problems: inFileOrder(problems), impossible: true }
    : { ok: true, spec, source };
}

/** A part's complaint at the value it speaks of, or as near to it as the file goes. */
function complaintProblem(complaint: Complaint, source: Source): Problem {
  const { offset } = locate(source, complaint.path);
  return { ...source.at(offset), ...complaint };
}

/** What a later floor has to say against values of a scenario that reads well, as its author gets to see it. */
export function complaintListing(complaints: readonly Complaint[], source: Source): string {
  return problemListing(inFileOrder(complaints.map((complaint) => complaintProblem(complaint, source))));
}
