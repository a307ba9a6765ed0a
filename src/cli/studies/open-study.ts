/** Opens a study, or the scenario of an engine with what the command line says about it, with everything it needs. */
import {
  isStudy,
  optionOverrides,
  optionStudy,
  problemListing,
  readStudy,
  type Attachment,
  type Attachments,
  type Study,
  type StudySurroundings,
} from '../../index.ts';
import { InputError } from '../exit-codes.ts';
import { defaultFolder } from '../report-files.ts';
import { attachmentsOf, readableScenario, textOf } from '../scenario-file.ts';

export interface OpenedStudy {
  readonly study: Study;
  /** Tables that were read on the way. */
  readonly tables: Readonly<Record<string, Attachment>>;
  /** `reports/<name of the file>/` below the current folder. */
  readonly folder: string;
}

export interface StudyOptions {
  readonly file: string;
  readonly set: readonly string[];
  readonly vary?: readonly string[];
}

export function openStudy({ file, set, vary = [] }: StudyOptions): OpenedStudy {
  const text = textOf(file);
  const said = optionOverrides(set);
  if (!said.ok) throw new InputError(problemListing(said.problems));
  const tables: Record<string, Attachment> = {};
  const surroundings: StudySurroundings = {
    scenario: readableScenario,
    tables: (path) => noting(attachmentsOf(path), tables),
    overrides: said.overrides,
  };
  const study = isStudy(text, file);
  if (study && vary.length > 0)
    throw new InputError(
      `${file}: a study says itself what varies; --vary goes with the scenario of an engine.`,
    );
  const reading = study
    ? readStudy(text, file, surroundings)
    : optionStudy({ file, text }, vary, surroundings);
  if (!reading.ok) throw new InputError(problemListing(reading.problems));
  return { study: reading.study, tables, folder: defaultFolder(file) };
}

function noting(attachments: Attachments, tables: Record<string, Attachment>): Attachments {
  return (path) => (tables[path] ??= attachments(path));
}
