/** What a pressure decay says, in figures, words and pictures. */
import { referenceVolumeFlow } from '../gas/reference-atmosphere.ts';
import { exp } from '../numerics/elementary/exponential.ts';
import { hypot } from '../numerics/elementary/roots.ts';
import { decayCautions } from './cautions.ts';
import { shapeOf, type DecayFit, type DecayFits } from './decay-fit.ts';
import type { DecayTest } from './decay-sheet.ts';
import { equivalentGap, equivalentHole, HOLE_DISCHARGE } from './equivalent-leak.ts';
import type { Estimate, Finding, Picture } from './finding.ts';
import { readingError } from './interval.ts';
import {
  estimateText,
  fineText,
  fineUnit,
  gaugeLabel,
  gaugeReading,
  gaugeText,
  percent,
  plain,
  shown,
  written,
} from './words.ts';

/** The share by which the leak may be out, at a pressure, the volume and the choice of law included. */
function leakInterval(test: DecayTest, fits: DecayFits, best: DecayFit) {
  const at = test.conditions.pressure;
  const decided = shapeOf(fits) !== undefined;
  const ends = (decided ? [best] : [fits.laminar, fits.orifice]).map((fit) => {
    const share = hypot(fit.share, test.own.volume_within);
    return { low: fit.flow(at) * exp(-share), high: fit.flow(at) * exp(share) };
  });
  return {
    value: best.flow(at),
    low: Math.min(...ends.map(({ low }) => low)),
    high: Math.max(...ends.map(({ high }) => high)),
  };
}

function estimatesOf(test: DecayTest, leak: ReturnType<typeof leakInterval>): Estimate[] {
  const { own, context, conditions } = test;
  const shape = own.shape.build(undefined);
  const through = (convert: (flow: number) => number) => ({
    value: convert(leak.value),
    low: convert(leak.low),
    high: convert(leak.high),
  });
  return [
    {
      name: `Leak at ${gaugeText(conditions.pressure, conditions.against)}`,
      ...through((flow) => referenceVolumeFlow(context.gas, flow)),
      dimension: 'volume flow',
      ...(context.gas.origin === 'room air' ? { suffix: 'ANR' } : {}),
    },
    {
      name: `As a round hole with a discharge coefficient of ${HOLE_DISCHARGE}, diameter`,
      ...through((flow) => equivalentHole(flow, conditions)),
      dimension: 'length',
    },
    {
      name: `As ${own.gaps === 1 ? 'a gap' : `${own.gaps} gaps`} of the shape “${own.shape.kind}”, ${shape.heightName}`,
      ...through((flow) => equivalentGap(flow / own.gaps, shape, conditions)),
      dimension: 'length',
    },
  ];
}

export function decayMeasured(test: DecayTest, fits: DecayFits, best: DecayFit, wait: number): Finding {
  const shape = shapeOf(fits);
  const estimates = estimatesOf(test, leakInterval(test, fits, best));
  const kind = {
    laminar: 'the curve is that of a narrow gap (laminar)',
    orifice: 'the curve is that of a hole (orifice-like)',
    undecided: 'the curve does not tell a gap from a hole',
  }[shape ?? 'undecided'];
  return {
    usable: true,
    headline: `It leaks ${estimateText(estimates[0]!)} at ${gaugeText(test.conditions.pressure, test.conditions.against)}; ${kind}.`,
    estimates,
    statements: [
      evidence(fits, test),
      `Ranges are 95 % intervals: steps of the gauge, scatter about the law, and ${percent(test.own.volume_within)} in the volume.`,
    ],
    warnings: [...coolingWarnings(test, best, wait), ...rangeWarnings(test, shape)],
    pictures: pictures(test, fits, best),
    scenario: scenarioLines(test, shape ?? best.shape, best, estimates),
    next:
      shape === undefined
        ? 'Let the gauge fall further, to a third of its first reading or less: gap and hole part company near the end.'
        : shape === 'laminar'
          ? 'Put the lines for the scenario in place of the clearance that was guessed for this gap, and run it.'
          : 'Look for a hole, a nick or a gasket before lapping anything: soapy water shows the place.',
    cautions: decayCautions(test.own.volume, test.raw[0]!, test.context),
  };
}

function evidence(fits: DecayFits, { own }: DecayTest): string {
  const away = ({ fit }: DecayFit): string => {
    const rms = Math.sqrt(fit.sumOfSquares / fit.residuals.length) * readingError(own.gauge_step);
    return fineText(rms);
  };
  return (
    `On average the readings lie ${away(fits.laminar)} from the best gap and ${away(fits.orifice)} from the best hole; ` +
    `a step of the gauge is ${fineText(own.gauge_step)}.`
  );
}

function coolingWarnings({ own }: DecayTest, { cooling }: DecayFit, wait: number): string[] {
  if (cooling === undefined) return [];
  const until = shown(own.waited + wait, 'time', 2);
  if (cooling.plain)
    return [
      `The first readings still show air that cools: ${percent(cooling.share)} of the pressure was warmth, fading with a time ` +
        `constant of ${shown(cooling.timeConstant, 'time', 2)}. It has been taken out; next time wait ${until} after shutting ` +
        'off before the first reading.',
    ];
  return [
    `Air in a volume of this size may cool for ${until} after it was let in (estimate), and the first reading came after ` +
      `${shown(own.waited, 'time', 2)}. That doubt is in the range; wait ${until} next time and it shrinks.`,
  ];
}

function rangeWarnings({ raw, conditions }: DecayTest, shape: DecayFit['shape'] | undefined): string[] {
  const [highest, lowest] = [raw[0]!, raw.at(-1)!];
  if (conditions.pressure <= 1.1 * highest && conditions.pressure >= 0.9 * lowest) return [];
  const law =
    shape === undefined ? 'which law holds is not known' : `the ${shape} law is taken to hold there`;
  return [
    `The leak is told for ${gaugeText(conditions.pressure, conditions.against)}, outside of what was read; ${law}.`,
  ];
}

function pictures(
  { time, raw, pressure, own, conditions }: DecayTest,
  fits: DecayFits,
  best: DecayFit,
): Picture[] {
  const fine = fineUnit();
  const gauge = (p: number): number => gaugeReading(p, conditions.against);
  const residual = (fit: DecayFit): number[] => time.map((t, i) => fine.of(pressure[i]! - fit.reading(t)));
  const x = { label: 'Time since the first reading [s]', values: time };
  const corrected = own.readings.columns.temperature !== undefined;
  return [
    {
      id: 'decay',
      title: `The gauge falls from ${gaugeText(raw[0]!, conditions.against)} to ${gaugeText(raw.at(-1)!, conditions.against)}`,
      x,
      y: { label: `Pressure [${gaugeLabel()}]` },
      lines: [
        { label: 'read', values: raw.map(gauge), points: true },
        ...(corrected ? [{ label: 'at wall temperature', values: pressure.map(gauge), points: true }] : []),
        { label: 'gap', values: time.map((t) => gauge(fits.laminar.reading(t))) },
        { label: 'hole', values: time.map((t) => gauge(fits.orifice.reading(t))) },
        ...(best.cooling?.plain !== true
          ? []
          : [{ label: 'the leak alone', values: time.map((t) => gauge(best.leakOnly(t))) }]),
      ],
    },
    {
      id: 'decay-residuals',
      title: 'What each law leaves over: the right one leaves only the steps of the gauge, without a bend',
      x,
      y: { label: `Read less fitted [${fine.label}]` },
      lines: [
        { label: 'gap', values: residual(fits.laminar), points: true },
        { label: 'hole', values: residual(fits.orifice), points: true },
      ],
    },
  ];
}

function scenarioLines(
  { own, time, conditions }: DecayTest,
  shape: DecayFit['shape'],
  best: DecayFit,
  estimates: readonly Estimate[],
): string {
  if (shape === 'orifice')
    return [
      'leaks:',
      '  - kind: hole',
      `    between: ${own.between}`,
      `    diameter: ${written(estimates[1]!.value, 'length')}`,
      `    discharge_coefficient: ${HOLE_DISCHARGE}`,
    ].join('\n');
  const span = time.at(-1)!;
  return [
    'leaks:',
    '  - kind: pressure decay',
    `    between: ${own.between}`,
    `    volume: ${written(own.volume, 'volume').replace('³', '3')}`,
    `    from_pressure: ${written(best.leakOnly(0), 'pressure')}`,
    `    to_pressure: ${written(best.leakOnly(span), 'pressure')}`,
    `    time: ${plain(span, 5)} s`,
    `    temperature: ${written(conditions.temperature, 'temperature')}`,
  ].join('\n');
}

type Unusable = Pick<Finding, 'headline' | 'statements' | 'next'>;

const unusable = (test: DecayTest, words: Unusable, found: readonly Picture[] = []): Finding => ({
  usable: false,
  estimates: [],
  warnings: [],
  pictures: found,
  scenario: '',
  cautions: decayCautions(test.own.volume, test.raw[0]!, test.context),
  ...words,
});

export function hardlyFell(test: DecayTest, fallen: number): Finding {
  const { own, context, time, conditions } = test;
  const span = time.at(-1)!;
  const most = (own.volume * (Math.max(fallen, 0) + own.gauge_step)) / span;
  const density = 1 / (context.gas.specificGasConstant * conditions.temperature);
  const flow = referenceVolumeFlow(context.gas, most * density);
  const longer = fallen > 0 ? (10 * own.gauge_step * span) / fallen : 10 * span;
  return unusable(test, {
    headline: `Too tight, or too short a test: the gauge fell by less than three of its steps. The leak is below ${shown(flow, 'volume flow', 2)} ANR.`,
    statements: [
      `In ${shown(span, 'time')} it fell by ${fineText(fallen, 3)}; a step is ${fineText(own.gauge_step, 3)}.`,
    ],
    next: `Read on for ${shown(longer, 'time', 2)}, or take a finer gauge or a smaller volume.`,
  });
}

export function stillCooling(test: DecayTest, best: DecayFit, wait: number): Finding {
  const { share, timeConstant } = best.cooling ?? { share: 0, timeConstant: 0 };
  const warmth = `${percent(Math.max(share, 0))} of the pressure was warmth at the first reading`;
  const until = test.own.waited + wait;
  return unusable(
    test,
    {
      headline: `No figure: the air was still cooling, and most of what the gauge lost was warmth and not air.`,
      statements: [
        `By the best reckoning ${warmth}, fading with a time constant of ${shown(timeConstant, 'time', 2)}; too little was ` +
          'read after that.',
      ],
      next: `Shut off, wait ${shown(until, 'time', 2)}, and only then begin to read.`,
    },
    pictures(test, { laminar: best, orifice: best }, best).slice(0, 1),
  );
}
