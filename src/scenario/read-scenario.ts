/** An engine from the text of its scenario file. */
import type { Complaint } from '../kinds/kind.ts';
import { engineComplaints, engineParameters, type EngineSpec } from '../parts/engine-description.ts';
import type { Attachments } from './attachments.ts';
import { locate } from './locate.ts';
import { inFileOrder, problemListing, type Problem } from './problem.ts';
import { readDescription } from './read-description.ts';
import type { Source } from './source.ts';

/** An engine that can be, with the file it was read from; or everything that is wrong with the file, in its order. */
export type ScenarioReading =
  | { readonly ok: true; readonly spec: EngineSpec; readonly source: Source }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** `attachments` hands over the tables that the file names; without it there are none to be had. */
export function readScenario(text: string, file: string, attachments?: Attachments): ScenarioReading {
  const reading = readDescription(text, file, engineParameters, attachments);
  if (!reading.ok) return reading;
  const { values: spec, source } = reading;
  const problems = engineComplaints(spec).map((complaint) => complaintProblem(complaint, source));
  return problems.length > 0 ? { ok: false, problems: inFileOrder(problems) } : { ok: true, spec, source };
}

/** A part's complaint at the value it speaks of, or as near to it as the file goes. */
function complaintProblem(complaint: Complaint, source: Source): Problem {
  const { offset } = locate(source, complaint.path);
  return { file: source.file, ...source.at(offset), ...complaint };
}

/** What a later floor has to say against values of a scenario that reads well, as its author gets to see it. */
export function complaintListing(complaints: readonly Complaint[], source: Source): string {
  return problemListing(inFileOrder(complaints.map((complaint) => complaintProblem(complaint, source))));
}
