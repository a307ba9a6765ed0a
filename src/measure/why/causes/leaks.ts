/** A gap that lets air away: at rest by its hiss, in slow running by what it takes from every turn. */
import { referenceVolumeFlow } from '../../../gas/reference-atmosphere.ts';
import { gasNamed } from '../../../gas/registry.ts';
import { percent, plain, shown } from '../../words.ts';
import type { Cause, Evidence, Suspect } from '../cause.ts';

/** A leak worth hearing [m³/s]: a litre a minute. */
const AUDIBLE = 1e-3 / 60;

function atRest({ spec, place, scan }: Evidence): Suspect[] {
  const gas = gasNamed(spec.gas);
  const names = [...new Set(scan.flatMap(({ leaks }) => leaks.map(({ name }) => name)))];
  return names.flatMap((name): Suspect[] => {
    const flow = referenceVolumeFlow(gas, place.leaks.find((own) => own.name === name)?.massFlow ?? 0);
    const flows = scan.map(({ leaks }) => leaks.find((own) => own.name === name)?.massFlow ?? 0);
    const most = referenceVolumeFlow(gas, Math.max(...flows));
    const share = place.airFlowAnr > 0 ? flow / place.airFlowAnr : 0;
    return [
      {
        cause: `The gap “${name}”`,
        weight: Math.min(1, share) * Math.min(1, flow / AUDIBLE),
        number:
          `By the scenario it lets ${shown(flow, 'volume flow', 2)} ANR away at this angle, ${percent(Math.min(1, share))} of all that ` +
          `leaks, and ${shown(most, 'volume flow', 2)} where it leaks most.`,
        test: 'Clamp the crank here, shut the air off and time the gauge (bench test “pressure decay”); soapy water or a thin hose held to the ear shows the place.',
      },
    ];
  });
}

/** Slow turns give a leak more time: speed at which it takes as much as the cylinder. */
function runningSlowly({ spec, scan, result }: Evidence): Suspect[] {
  const { settled } = result;
  if (settled === undefined) return [];
  const mean =
    scan.reduce(
      (sum, { airFlowAnr, admission, exhaust }) => sum + (admission && exhaust ? 0 : airFlowAnr),
      0,
    ) / scan.length;
  const perTurn = settled.airFlowAnr * settled.period * settled.air.workedShare || NaN;
  const speed = mean / perTurn;
  const pressure = spec.supply.pressure;
  return [
    {
      cause: 'Leaks that a slow turn gives time to',
      weight: Math.min(1, (speed * settled.period) / 0.5),
      number:
        `At rest it leaks ${shown(mean, 'volume flow', 2)} ANR in the mean of a turn at ${shown(pressure, 'pressure')}; at ` +
        `${plain(60 * speed, 2)} rpm that is as much as the cylinder uses.`,
      test: 'Time the gauge with the crank clamped in mid-stroke (bench test “pressure decay”).',
    },
  ];
}

export const leakCause: Cause = {
  symptoms: ['hisses at rest', 'runs only fast'],
  suspects: (evidence) =>
    evidence.symptom === 'hisses at rest' ? atRest(evidence) : runningSlowly(evidence),
};
