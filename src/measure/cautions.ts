/** What can hurt at the bench, test by test. Local rules and licensed people have the last word. */
import type { BenchCaution } from './finding.ts';
import type { TestContext } from './test-context.ts';
import { gaugeText, workText } from './words.ts';

const eyes: BenchCaution = {
  topic: 'Eyes, ears and hands',
  text:
    'Wear eye protection. Shut off, vent and check that the gauge shows nothing before a joint is loosened. Local rules for ' +
    'machines and compressed air come before this page.',
  severity: 'caution',
};

const clamped: BenchCaution = {
  topic: 'Clamp the crank',
  text:
    'Air behind a piston turns the crank as soon as it can, also by itself later on. Clamp the flywheel or block the crank at ' +
    'a dead centre with something that cannot fly off, and stand clear of the wheel.',
  severity: 'danger',
};

/** An upper figure by Brode's rule, as in the cautions of a run. */
function stored(volume: number, pressure: number, { gas, atmosphericPressure }: TestContext): BenchCaution {
  const energy = ((pressure - atmosphericPressure) * volume) / (gas.heatCapacityRatio - 1);
  const text =
    `At ${gaugeText(pressure, atmosphericPressure)} the volume holds up to ${workText(energy)}, (p − p₀)·V/(γ − 1). Use only ` +
    'vessels, hoses and gauges rated for the pressure, with a relief valve, and test home-made ones with water first, as the ' +
    'local code or a licensed inspector asks.';
  return { topic: 'Stored energy', text, severity: energy > 10e3 ? 'danger' : 'caution' };
}

export const decayCautions = (volume: number, pressure: number, context: TestContext): BenchCaution[] => [
  stored(volume, pressure, context),
  clamped,
  eyes,
];

export const pumpUpCautions = (volume: number, pressure: number, context: TestContext): BenchCaution[] => [
  stored(volume, pressure, context),
  {
    topic: 'Never past the mark',
    text:
      'Do not block, bridge or screw down pressure switch or relief valve to get more readings; stop where the receiver is ' +
      'marked for. Its delivery pipe and head get hot enough to burn.',
    severity: 'danger',
  },
  eyes,
];

export const coastDownCautions: readonly BenchCaution[] = [
  {
    topic: 'A wheel with nothing to stop it',
    text:
      'Guard flywheel and crank, tie back sleeves and hair, take off handle and crank before letting go, and let the wheel come ' +
      'to rest by itself. Spin it by hand or cord no faster than it will ever run.',
    severity: 'danger',
  },
  {
    topic: 'No air in the line',
    text:
      'Take the hose off the engine, so that the valve breathes from the room: an engine that is only shut off can start when a ' +
      'valve leaks.',
    severity: 'caution',
  },
  eyes,
];

export const breakAwayCautions: readonly BenchCaution[] = [
  {
    topic: 'A weight that falls',
    text:
      'Hang the weight close above the floor on something soft, keep feet and fingers from under it, and stand clear of the cord: ' +
      'when the engine moves off, it moves at once.',
    severity: 'caution',
  },
  {
    topic: 'No air in the line',
    text: 'Take the hose off and open the chest to the room before anyone touches wheel or cord.',
    severity: 'danger',
  },
  eyes,
];

export const runningCautions: readonly BenchCaution[] = [
  {
    topic: 'A running engine',
    text:
      'Guard crank, flywheel and valve gear, and read speed without touching anything that turns. Have the shut-off within reach: ' +
      'an engine that loses its load runs away. Hold a brake only by its scale, never by hand.',
    severity: 'danger',
  },
  {
    topic: 'Noise, cold and oil',
    text: 'Wear eye and ear protection. The exhaust is loud, may be far below freezing and carries oil and ice.',
    severity: 'caution',
  },
  eyes,
];

export const whyCautions: readonly BenchCaution[] = [
  {
    topic: 'It may start while you look',
    text:
      'An engine that will not run under air may run all of a sudden when a finger frees it. Shut off, vent, and block the crank ' +
      'before you touch wheel, rod or valve gear; look and listen from the side.',
    severity: 'danger',
  },
  clamped,
  eyes,
];
