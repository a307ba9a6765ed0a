/** Why will it not run? Causes in the order of what speaks for them, each with its number and the test that settles it. */
import { sin } from '../../numerics/elementary/trigonometric.ts';
import type { EngineSpec } from '../../parts/engine-description.ts';
import { columnUnit } from '../../quantity/format.ts';
import { wrappedAngle } from '../../parts/crank-positions.ts';
import { runEngine } from '../../run/run-engine.ts';
import type { RunResult } from '../../run/result.ts';
import { whyCautions } from '../cautions.ts';
import type { Finding, FindingTable, Picture } from '../finding.ts';
import { meanInertia } from '../motoring.ts';
import { angleDegrees, degreesText, plain, rpm } from '../words.ts';
import type { Evidence, Suspect } from './cause.ts';
import { causes } from './causes/registry.ts';
import { restScan, worstStretch, type Standing } from './rest-scan.ts';
import { symptoms, type Symptom } from './symptoms.ts';

/** `angle`: where it stops or stands on the bench [rad]. */
export function diagnosis(spec: EngineSpec, symptom: Symptom, angle?: number): Finding {
  const result = runEngine(spec);
  const scan = restScan(spec);
  const place = placeOf(scan, result, angle);
  if (place === undefined) return noScan();
  const evidence: Evidence = {
    symptom,
    spec,
    result,
    scan,
    stretch: worstStretch(scan),
    place,
    inertia: meanInertia(spec),
  };
  const ranked = suspectsOf(evidence);
  return {
    usable: true,
    headline: headlineOf(symptom, ranked),
    estimates: [],
    statements: [
      `Symptom: ${symptoms[symptom]}`,
      modelSentence(result),
      angle === undefined
        ? `Looked at for ${degreesText(place.angle)} after top dead centre; say --at 75deg where yours stops or stands.`
        : `Looked at for ${degreesText(place.angle)} after top dead centre.`,
      'The order says how much of the symptom each cause could account for by the numbers of the scenario. It is no verdict: where ' +
        'the scenario is wrong, so is the order, and that is what the tests are for.',
    ],
    warnings: [],
    tables: [causeTable(ranked)],
    pictures: [torquePicture(scan)],
    scenario: '',
    next: ranked[0]?.test ?? 'Measure the inputs of the scenario again, one by one.',
    cautions: whyCautions,
  };
}

/** The place that was said; else where the run came to rest; else where the air falls shortest. */
function placeOf(
  scan: readonly Standing[],
  result: RunResult,
  angle: number | undefined,
): Standing | undefined {
  const stood = result.settled === undefined ? result.outcome.crankAngle : undefined;
  const wanted = angle ?? stood;
  const score = (own: Standing): number =>
    wanted === undefined ? own.applied - own.holding : Math.abs(sin((wrappedAngle(wanted) - own.angle) / 2));
  return scan.reduce<Standing | undefined>(
    (best, own) => (best === undefined || score(own) < score(best) ? own : best),
    undefined,
  );
}

const suspectsOf = (evidence: Evidence): Suspect[] =>
  causes
    .filter((own) => own.symptoms.includes(evidence.symptom))
    .flatMap((own) => own.suspects(evidence))
    .filter(({ weight }) => weight > 0.01)
    .sort((a, b) => b.weight - a.weight);

function headlineOf(symptom: Symptom, [first, second]: readonly Suspect[]): string {
  if (first === undefined) return `Nothing in the scenario explains why it ${symptom}.`;
  const close = second !== undefined && second.weight > 0.7 * first.weight;
  return close
    ? `It ${symptom}: most likely ${lower(first.cause)}, or ${lower(second.cause)}.`
    : `It ${symptom}: most likely ${lower(first.cause)}.`;
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const modelSentence = ({ settled, outcome }: RunResult): string =>
  settled === undefined
    ? `By the scenario it does not run either: ${outcome.reason}`
    : `By the scenario it should run, at ${plain(rpm(settled.speed))} rpm: something is worse than the scenario says, and the causes are ` +
      'ranked by how little would have to be.';

const causeTable = (ranked: readonly Suspect[]): FindingTable => ({
  caption: 'Causes, the likeliest first',
  head: ['Cause', 'Number behind it', 'Test that would confirm it', 'Weight'],
  rows: ranked.map(({ cause, number, test, weight }, i) => [
    `${i + 1}. ${cause}`,
    number,
    test,
    plain(weight, 2),
  ]),
});

function torquePicture(scan: readonly Standing[]): Picture {
  const torques = columnUnit('torque');
  return {
    id: 'standing',
    title: 'Held still under air, angle by angle: it moves off forward where the push is above what holds it',
    x: {
      label: 'Crank angle after top dead centre [°]',
      values: scan.map(({ angle }) => angleDegrees(angle)),
    },
    y: { label: `Torque [${torques.label}]` },
    lines: [
      { label: 'push of the air', values: scan.map(({ applied }) => torques.of(applied)) },
      { label: 'what holds it', values: scan.map(({ holding }) => torques.of(holding)) },
    ],
  };
}

const noScan = (): Finding => ({
  usable: false,
  headline: 'No answer: the model gave up on holding this engine still under air.',
  estimates: [],
  statements: [],
  warnings: [],
  pictures: [],
  scenario: '',
  next: 'Check the sizes of the scenario for slips of a decimal point.',
  cautions: whyCautions,
});
