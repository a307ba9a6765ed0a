/** A trace of any length in a bounded number of points. */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { traceRecorder } from '../../../src/run/trace-recorder.ts';
import { systemOf } from '../../support/drive.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const system = systemOf(referenceSpec());

/** A recorder that has been shown states at steady intervals. */
function recorded(states: number, interval: number) {
  const recorder = traceRecorder(system);
  const y = initialState(system, 0, 1);
  for (let i = 0; i < states; i += 1) {
    y[SLOT.time] = i * interval;
    y[SLOT.crankAngle] = i * interval;
    recorder.note((slot) => y[slot]!);
  }
  return { recorder, y };
}

describe('a trace', () => {
  it.each([10, 3999, 4000, 4001, 100_000])('of %i states stays within four thousand points', (states) => {
    const { recorder, y } = recorded(states, 1e-3);
    const { time } = recorder.finish(y);
    expect(time.length).toBeLessThanOrEqual(4000);
    expect(time.length).toBeGreaterThanOrEqual(Math.min(states, 2000));
  });

  it('begins at the beginning, ends at the end, and only goes forward', () => {
    const { recorder, y } = recorded(30_000, 1e-3);
    const { time } = recorder.finish(y);
    expect(time[0]).toBe(0);
    expect(time.at(-1)).toBe(y[SLOT.time]);
    expect(time.slice(1).every((at, i) => at > time[i]!)).toBe(true);
  });

  it('keeps its points evenly apart', () => {
    const { recorder, y } = recorded(30_000, 1e-3);
    const { time } = recorder.finish(y);
    const gaps = time.slice(1, -1).map((at, i) => at - time[i]!);
    expect(Math.max(...gaps) / Math.min(...gaps)).toBeLessThan(2.5);
  });

  it('leaves out states that follow too closely', () => {
    const { recorder, y } = recorded(1000, 1e-6);
    expect(recorder.finish(y).time.length).toBeLessThan(10);
  });

  it('keeps a moment that is marked, however soon after the last point, but not the same one twice', () => {
    const { recorder, y } = recorded(5, 1e-2);
    const rest = y.slice();
    rest[SLOT.time] = 0.04 + 1e-6;
    recorder.mark((slot) => rest[slot]!);
    recorder.mark((slot) => rest[slot]!);
    expect([...recorder.finish(rest).time]).toEqual([0, 0.01, 0.02, 0.03, 0.04, 0.04 + 1e-6]);
  });

  it('has columns of one length, with pressures of the room at first', () => {
    const { recorder, y } = recorded(5, 1e-2);
    const trace = recorder.finish(y);
    for (const column of Object.values(trace) as Float64Array[]) expect(column).toHaveLength(5);
    expect(trace.chestPressure[0]! / system.engine.atmosphere.pressure).toBeCloseTo(1, 12);
    expect(trace.cylinderPressure[0]! / system.engine.atmosphere.pressure).toBeCloseTo(1, 12);
  });

  it('has in each column what the state of its moment shows', () => {
    const recorder = traceRecorder(system);
    const states = [1, 2, 3].map((n) => {
      const y = initialState(system, n / 2, 10 + n);
      y[SLOT.time] = n;
      for (const [volume, factor] of [1 + n, 1 + n / 4].entries()) {
        y[system.slots.mass(volume)]! *= factor;
        y[system.slots.energy(volume)]! *= factor;
      }
      return y;
    });
    for (const y of states.slice(0, 2)) recorder.note((slot) => y[slot]!);
    const { pressure } = system.engine.atmosphere;
    const { time, crankAngle, speed, chestPressure, cylinderPressure } = recorder.finish(states[2]!);
    const rows = states.map((_, i) =>
      [
        time[i]!,
        crankAngle[i]!,
        speed[i]!,
        chestPressure[i]! / pressure,
        cylinderPressure[i]! / pressure,
      ].map((value) => Math.round(value * 1e9) / 1e9),
    );
    expect(rows).toEqual([
      [1, 0.5, 11, 2, 1.25],
      [2, 1, 12, 3, 1.5],
      [3, 1.5, 13, 4, 1.75],
    ]);
  });

  it('keeps the first of two points where it has to halve them, and is then noted half as often', () => {
    const { recorder, y } = recorded(4001, 6e-4);
    const { time } = recorder.finish(y);
    expect(time[1]).toBeCloseTo(1.2e-3, 12);
    expect(time.length).toBeLessThanOrEqual(2002);
    const soon = recorded(3, 4e-4);
    // Half a millisecond has to go by.
    expect([...soon.recorder.finish(soon.y).time].map((at) => Math.round(at * 1e4))).toEqual([0, 8]);
  });
});
