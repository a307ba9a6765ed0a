/**
 * Energy of the gas under pressure, by Brode's rule E = (p − p₀)·V/(γ − 1) (name from memory): the heat that would raise
 * the closed vessel from the room's pressure to its own. A release without heat from the walls frees less at any pressure,
 * E = p·V/(γ − 1)·(1 − (p₀/p)^((γ−1)/γ)), so it is an upper figure.
 */
import type { RunResult } from '../../run/result.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { figure, gaugeText, litresText, metresText, workText } from '../figures.ts';
import type { Caution, Severity } from './caution.ts';

/** A heavy person [kg], and what pulls at them [m/s²]. */
const PERSON = 100;
const GRAVITY = 9.81;

/** [J]; pressures absolute [Pa], volume [m³], ratio of heat capacities γ. */
export function storedEnergy(pressure: number, atmosphere: number, volume: number, gamma: number): number {
  return ((pressure - atmosphere) * volume) / (gamma - 1);
}

export function storedEnergyCaution(result: RunResult): Caution {
  const { receiver, atmosphericPressure, gas } = result.engine;
  const gamma = gas.heatCapacityRatio;
  const inEngine = engineEnergy(result);
  const inReceiver =
    receiver === undefined ? 0 : storedEnergy(receiver.pressure, atmosphericPressure, receiver.volume, gamma);
  return {
    topic: 'Stored energy',
    text: [
      ...(receiver === undefined ? [] : [receiverSentence(receiver, atmosphericPressure, inReceiver)]),
      engineSentence(result, inEngine),
      `Reckoned by Brode's rule, (p − p₀)·V/(γ − 1) with γ = ${figure(gamma)}, an upper figure for a sudden release.`,
      'Use only a receiver built, marked and inspected for its pressure, and never weld or drill one: the local code ' +
        'for pressure vessels and its licensed inspectors decide, not this calculation.',
    ].join(' '),
    severity: severityOf(inEngine + inReceiver),
  };
}

function engineEnergy({ engine }: RunResult): number {
  const volume = engine.chestVolume + engine.clearanceVolume + engine.sweptVolume;
  return storedEnergy(
    engine.supplyPressure,
    engine.atmosphericPressure,
    volume,
    engine.gas.heatCapacityRatio,
  );
}

function receiverSentence(
  receiver: { readonly volume: number; readonly pressure: number },
  atmosphere: number,
  energy: number,
): string {
  return (
    `The full receiver, ${litresText(receiver.volume)} at ${gaugeText(receiver.pressure, atmosphere)}, holds up to ` +
    `${workText(energy)}, as much as lifts ${formatQuantity(PERSON, 'mass', { digits: 3 })} by ${metresText(energy / (PERSON * GRAVITY), 2)}.`
  );
}

function engineSentence({ engine }: RunResult, energy: number): string {
  const volume = engine.chestVolume + engine.clearanceVolume + engine.sweptVolume;
  return (
    `Chest, hose and cylinder, ${litresText(volume)} at ${gaugeText(engine.supplyPressure, engine.atmosphericPressure)}, ` +
    `hold up to ${workText(energy)}.`
  );
}

/** Steps of our own, no source; a university's safety office calls 100 kJ highly hazardous (see docs/cautions.md). */
function severityOf(energy: number): Severity {
  if (energy >= 10e3) return 'danger';
  return energy >= 100 ? 'caution' : 'note';
}
