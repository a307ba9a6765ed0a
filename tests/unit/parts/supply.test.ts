/** The hose and the chest. */
import { describe, expect, it } from 'vitest';
import { dryAir } from '../../../src/gas/gases/dry-air.ts';
import { hosePassage } from '../../../src/parts/supply.ts';
import { buildEngine } from '../../../src/model/engine.ts';
import { plainHose } from '../../support/ideal-engine.ts';
import { referenceSpec } from '../../support/reference-engine.ts';

const own = referenceSpec().supply;
const flow = (bore: number, length: number): number =>
  hosePassage({ ...own, hose: plainHose(bore, length) }, dryAir).massFlow(0, 4e5, 290, 3.8e5, 290, 0);

describe('the hose', () => {
  it('leads from the supply to the chest', () => {
    expect(hosePassage(own, dryAir)).toMatchObject({ role: 'supply', from: 'supply', to: 'chest' });
  });

  it('counts with the volume of the chest', () => {
    const supply = { ...own, chest_volume: 60e-6, hose: plainHose(8e-3, 4) };
    const [chest] = buildEngine(referenceSpec({ supply })).volumes;
    expect(chest!.fixedVolume! * 1e6).toBeCloseTo(60 + 201.06, 2);
  });

  it('passes less the longer and the narrower it is', () => {
    expect(flow(8e-3, 8)).toBeLessThan(flow(8e-3, 4));
    expect(flow(6e-3, 4)).toBeLessThan(flow(8e-3, 4));
  });

  it('carries air back when the chest is at the higher pressure', () => {
    const hose = hosePassage(own, dryAir);
    expect(hose.massFlow(0, 3e5, 290, 4e5, 290, 0)).toBeLessThan(0);
  });
});
