/** What an engine can drive, of engines without air: they cost next to nothing, and drive nothing. */
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../../src/model/engine.ts';
import { valveGears } from '../../../src/parts/valve-gears/registry.ts';
import { driveOf, runAndDrive } from '../../../src/run/drive.ts';
import { chosen } from '../../support/chosen.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { growingLoad, referenceSpec } from '../../support/reference-engine.ts';

/** On a slip eccentric, so that it serves both ways. */
const slideValve = chosen(valveGears, 'flat slide valve', {
  ...{ travel: 10e-3, steam_lap: 2.2e-3, lead: 0.3e-3, port_width: 2.5e-3, bar_width: 4e-3 },
  ...{ port_length: 16e-3, cavity_length: 15e-3, rim_width: 3e-3, face_gap: 5e-6 },
  ...{ friction_coefficient: 0.1, eccentric: 'slip' },
});

describe('what an engine can drive', () => {
  it('without air is nothing, and it starts from nowhere', () => {
    const spec = referenceSpec({ supply: { pressure: 101_325 }, load: growingLoad(1, 0.01) });
    const drive = driveOf(spec);
    expect(drive.operatingPoints).toEqual([]);
    expect(drive.startMap.positions).toHaveLength(72);
    expect(drive.startMap.unaidedShare).toBe(0);
    expect(drive.stallTorque).toBe(drive.curve.torque[0]);
    expect(drive.stallTorque).toBeLessThan(0);
    const { load } = buildEngine(spec);
    expect([...drive.load]).toEqual([...drive.curve.speed].map((speed) => load.torque(speed)));
    expect(drive).not.toHaveProperty('startMapReversed');
    // Room air does not leak.
    expectWithin(drive.curveWithoutLeaks.torque[0]!, drive.curve.torque[0]!, 0.2);
  });

  it('is told for the other way as well where its gear serves both, and it is not meant to run that way', () => {
    const still = referenceSpec({ supply: { pressure: 101_325 }, valve_gear: slideValve });
    const { startMap, startMapReversed } = driveOf(still);
    expect(startMapReversed).toEqual(startMap);
    expect(driveOf({ ...still, running_direction: 'reverse' })).not.toHaveProperty('startMapReversed');
  });

  it('comes with its run, and with the course of its receiver only if it settles on one', () => {
    const spec = referenceSpec({ supply: { pressure: 101_325 } });
    const run = runAndDrive(spec);
    expect(run.outcome.kind).toBe('no-start');
    expect(run.drive!.operatingPoints).toEqual([]);
    expect(run).not.toHaveProperty('supplyTrace');
  });
});
