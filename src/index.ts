/**
 * The public face of tickover: from the text of a scenario to a result, and from a result to words, tables and pages.
 * Everything here is pure; files, clock and console belong to the caller.
 */
export { complaintListing, readScenario, type ScenarioReading } from './scenario/read-scenario.ts';
export type { Attachment, Attachments } from './scenario/attachments.ts';
export { problemListing, problemText, type Problem } from './scenario/problem.ts';
export { scenarioJsonSchema, type JsonSchema } from './scenario/json-schema.ts';
export { describedKeys, type DescribedKey } from './scenario/described-keys.ts';
export { explainKey, type Explaining, type KeyExplanation } from './scenario/explain.ts';
export { newScenario, valveGearKinds, type NewScenario } from './scenario/new-scenario.ts';
export { inUnits, type UnitSystem } from './quantity/unit-system.ts';
export { measuringPage } from './scenario/measuring-page.ts';
export { referencePage } from './scenario/reference-page.ts';
export { engineParameters, type EngineSpec } from './parts/engine-description.ts';
export { runEngine } from './run/run-engine.ts';
export { driveOf, runAndDrive } from './run/drive.ts';
export type { Drive, OperatingPoint, StartMap, StartPosition, TorqueCurve } from './run/drive-result.ts';
export { settledRunning, type SettledAnswer } from './run/settled-running.ts';
export type { Outcome, OutcomeKind } from './run/outcome.ts';
export type {
  AirLedger,
  CompressorVerdict,
  Counters,
  CycleProfile,
  EndFacts,
  EndProfile,
  EngineFacts,
  LedgerResiduals,
  Moisture,
  PassageTotal,
  PlaceExtremes,
  Range,
  RunResult,
  SettledCycle,
  SettledTurn,
  StandStill,
  Trace,
  WorkLedger,
} from './run/result.ts';
export { drawingFiles, type DrawingFile, type Drawings, type DrawingWish } from './workshop/drawing-files.ts';
export { workshopPreview, type PartPreview, type WorkshopPreview } from './workshop/preview.ts';
export { verdictOf, type Verdict } from './verdict/verdict.ts';
export { keyFigures, type KeyFigure } from './verdict/key-figures.ts';
export type { Caution, Severity } from './verdict/cautions/caution.ts';
export { cycleCsv } from './report/csv/cycle-csv.ts';
export { traceCsv } from './report/csv/trace-csv.ts';
export { summaryJson } from './report/summary/summary-json.ts';
export type { Summary } from './report/summary/summary.ts';
export { reportHtml } from './report/report-html.ts';
export type { InlineAsset, ReportAssets } from './report/html/page.ts';
export { comparisonHtml } from './report/comparison/comparison-html.ts';
export { comparedTurnsCsv, comparisonCsv } from './report/comparison/comparison-csv.ts';
export { figureRows } from './report/comparison/compared-figures.ts';
export {
  MOST_RUNS,
  labelOf,
  type ComparedKey,
  type ComparedRun,
  type Comparison,
} from './report/comparison/comparison.ts';
export { differentKeys, type DifferentKey } from './scenario/written-values.ts';
export type { ReportExtras } from './report/sections/section.ts';
export { reportFileNames } from './report/file-names.ts';
