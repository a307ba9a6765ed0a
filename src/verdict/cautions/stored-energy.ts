/**
 * Energy of the air under pressure, by E = (p − p₀)·V/(γ − 1): heat capacity times the pressure that can be lost.
 * A real release, with or without heat from the walls, frees less (up to about 30 bar), so it is an upper figure.
 */
import type { RunResult } from '../../run/result.ts';
import { GAMMA } from '../cycle-reading.ts';
import { figure, gaugeText, litresText, workText } from '../figures.ts';
import type { Caution, Severity } from './caution.ts';

/** A person of 100 kg [N]. */
const WEIGHT = 981;

export function storedEnergy(pressure: number, atmosphere: number, volume: number): number {
  return ((pressure - atmosphere) * volume) / (GAMMA - 1);
}

export function storedEnergyCaution(result: RunResult): Caution {
  const { receiver, atmosphericPressure } = result.engine;
  const inEngine = engineEnergy(result);
  const inReceiver =
    receiver === undefined ? 0 : storedEnergy(receiver.pressure, atmosphericPressure, receiver.volume);
  return {
    topic: 'Stored energy',
    text: [
      ...(receiver === undefined ? [] : [receiverSentence(receiver, atmosphericPressure, inReceiver)]),
      engineSentence(result, inEngine),
      'Reckoned as (p − p₀)·V/(γ − 1) with γ = 1.4, an upper figure for a sudden release.',
      'Use only a receiver built, marked and inspected for its pressure, and never weld or drill one: the local code ' +
        'for pressure vessels and its licensed inspectors decide, not this calculation.',
    ].join(' '),
    severity: severityOf(inEngine + inReceiver),
  };
}

function engineEnergy({ engine }: RunResult): number {
  const volume = engine.chestVolume + engine.clearanceVolume + engine.sweptVolume;
  return storedEnergy(engine.supplyPressure, engine.atmosphericPressure, volume);
}

function receiverSentence(
  receiver: { readonly volume: number; readonly pressure: number },
  atmosphere: number,
  energy: number,
): string {
  return (
    `The full receiver, ${litresText(receiver.volume)} at ${gaugeText(receiver.pressure, atmosphere)}, holds up to ` +
    `${workText(energy)}, as much as lifts 100 kg by ${figure(energy / WEIGHT, 2)} m.`
  );
}

function engineSentence({ engine }: RunResult, energy: number): string {
  const volume = engine.chestVolume + engine.clearanceVolume + engine.sweptVolume;
  return (
    `Chest, hose and cylinder, ${litresText(volume)} at ${gaugeText(engine.supplyPressure, engine.atmosphericPressure)}, ` +
    `hold up to ${workText(energy)}.`
  );
}

/** Steps of our own, no source. */
function severityOf(energy: number): Severity {
  if (energy >= 10e3) return 'danger';
  return energy >= 100 ? 'caution' : 'note';
}
