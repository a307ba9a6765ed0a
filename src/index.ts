/**
 * The public face of tickover: from the text of a scenario to a result, and from a result to words, tables and pages.
 * Everything here is pure; files, clock and console belong to the caller.
 */
export {
  complaintListing,
  readScenario,
  scenarioReader,
  type ScenarioReader,
  type ScenarioReading,
} from './scenario/read-scenario.ts';
export {
  isStudy,
  readStudy,
  type Study,
  type StudyReading,
  type StudySurroundings,
} from './scenario/read-study.ts';
export { optionStudy } from './scenario/option-study.ts';
export { lengthOf, nominalAt } from './scenario/nominal.ts';
export {
  optionOverrides,
  settingOverride,
  type Override,
  type OverridesReading,
} from './scenario/override.ts';
export { changeableEngine, type ChangeableReading } from './scenario/changeable-engine.ts';
export type { Attachment, Attachments } from './scenario/attachments.ts';
export { problemListing, problemSentence, problemText, type Problem } from './scenario/problem.ts';
export { scenarioJsonSchema, type JsonSchema } from './scenario/json-schema.ts';
export { describedKeys, type DescribedKey } from './scenario/described-keys.ts';
export { explainKey, type Explaining, type KeyExplanation } from './scenario/explain.ts';
export { newScenario, valveGearKinds, type NewScenario } from './scenario/new-scenario.ts';
export { inUnits, type UnitSystem } from './quantity/unit-system.ts';
export { measuringPage } from './scenario/measuring-page.ts';
export { referencePage, studyReferencePage } from './scenario/reference-page.ts';
export { engineParameters, type EngineSpec } from './parts/engine-description.ts';
export { runEngine } from './run/run-engine.ts';
export { supplyTimeline } from './run/supply/timeline.ts';
export type {
  AnswerAtPressure,
  NoSupplyTimeline,
  SupplyEnd,
  SupplyFacts,
  SupplyTimeline,
} from './run/supply/timeline.ts';
export type { SupplyTrace } from './run/supply/supply-trace.ts';
export { driveOf, runAndDrive } from './run/drive.ts';
export type { Drive, OperatingPoint, StartMap, StartPosition, TorqueCurve } from './run/drive-result.ts';
export type { CompressorVerdict } from './run/compressor-verdict.ts';
export { settledRunning, type SettledAnswer } from './run/settled-running.ts';
export type { ChangedRunning, ChangedSetting, InVain, SlowTurn, TriedChange, Trials } from './run/trials.ts';
export type { Outcome, OutcomeKind } from './run/outcome.ts';
export type {
  AirLedger,
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
export { studyParameters } from './study/study-description.ts';
export { planOf, settingsAt, type Plan } from './study/plan.ts';
export type { SettingText } from './study/aims/aim.ts';
export type { Ask } from './study/ask.ts';
export {
  brokenOff,
  engineAnswer,
  impossible,
  runs,
  type EngineAnswer,
  type Wanted,
} from './study/engine-answer.ts';
export { worstMargin, type Condition } from './study/conditions/condition.ts';
export { bestSetting, type Best } from './study/best.ts';
export type { BestTask } from './study/best-search.ts';
export { limitOf, type Limit, type LimitTask } from './study/limit.ts';
export { processesWithin, type Processes } from './study/processes.ts';
export { rampOf } from './study/variations/ramp.ts';
export { oddsOf, type Built, type OddsAt, type OddsTask } from './study/odds.ts';
export { withTrials } from './study/remedies/with-trials.ts';
export type { ChangeableEngine } from './study/remedies/remedy.ts';
export { changeable, nextChanges, type NextChanges } from './study/next-changes.ts';
export {
  CSV_LINE_END,
  studyCsvHeader,
  studyCsvRows,
  studyJsonLine,
  sweptEngine,
  type StudyRow,
  type Varied,
} from './report/csv/study-rows.ts';
export { bestWords } from './verdict/studies/best-words.ts';
export { limitWords } from './verdict/studies/limit-words.ts';
export { oddsWords } from './verdict/studies/odds-words.ts';
export { nextWords } from './verdict/studies/next-words.ts';
export type { StudyWords } from './verdict/studies/study-words.ts';
export { sweepPage, type Swept } from './report/studies/sweep-page.ts';
export { sweepTally, sweepWords, type SweepTally, type SweptEngine } from './verdict/studies/sweep-words.ts';
export { bestPage } from './report/studies/best-page.ts';
export { limitPage } from './report/studies/limit-page.ts';
export { nextPage } from './report/studies/next-page.ts';
export { oddsPage } from './report/studies/odds-page.ts';
export { bestSummary, limitSummary, nextSummary, oddsSummary } from './report/studies/summaries.ts';
export { verdictOf, type Verdict } from './verdict/verdict.ts';
export { keyFigures, type KeyFigure } from './verdict/key-figures.ts';
export { supplyVerdict, type SupplyVerdict } from './verdict/supply-verdict.ts';
export type { Caution, Severity } from './verdict/cautions/caution.ts';
export { cycleCsv } from './report/csv/cycle-csv.ts';
export { startsCsv, torqueCsv } from './report/csv/drive-csv.ts';
export { traceCsv } from './report/csv/trace-csv.ts';
export { supplyCsv } from './report/csv/supply-csv.ts';
export { summaryJson } from './report/summary/summary-json.ts';
export type { Summary } from './report/summary/summary.ts';
export { supplyJson } from './report/summary/supply-json.ts';
export type { SupplySummary } from './report/summary/supply-summary.ts';
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
export { benchFileNames } from './report/file-names.ts';
export { readBenchSheet, type BenchSheet, type BenchSheetReading } from './scenario/read-bench-sheet.ts';
export { sheetParameters } from './measure/sheet-description.ts';
export type { BenchCaution, Estimate, Finding, Picture, PictureLine } from './measure/finding.ts';
export { benchHtml, type TitledFinding } from './report/bench/bench-html.ts';
export { estimateRow } from './report/bench/estimates.ts';
export { readAttempts, type AttemptsFile, type AttemptsReading } from './scenario/read-attempts.ts';
export { attemptsParameters } from './measure/attempts-description.ts';
export { notebookFinding } from './measure/attempts/notebook.ts';
export { diagnosis } from './measure/why/diagnosis.ts';
export { symptomNames, symptoms, type Symptom } from './measure/why/symptoms.ts';
export { parseQuantity } from './quantity/parse-quantity.ts';
export { attemptsReferencePage, benchReferencePage } from './scenario/bench-reference.ts';
