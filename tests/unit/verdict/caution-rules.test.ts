/** Each computed caution at its thresholds, with the numbers worked out by hand. */
import { describe, expect, it } from 'vitest';
import { barrelMaterial, barrelMaterialNames } from '../../../src/parts/barrel-materials.ts';
import type { EngineFacts, RunResult } from '../../../src/run/result.ts';
import { barrelHoopStress } from '../../../src/verdict/cautions/barrel.ts';
import { timeToOxygenDeficiency } from '../../../src/verdict/cautions/bottled-gas.ts';
import { cautions } from '../../../src/verdict/cautions/registry.ts';
import { releaseRatio, releasesPerSecond } from '../../../src/verdict/cautions/noise.ts';
import { noStartResult, saggingResult, settledResult } from '../report/synthetic-result.ts';

const { engine, settled: cycle } = settledResult;
const room = engine.atmosphericPressure;

const topic = (result: RunResult, name: string) =>
  cautions.flatMap((rule) => rule(result) ?? []).find((caution) => caution.topic === name);

const withEngine = (changes: Partial<EngineFacts>, result = settledResult): RunResult => ({
  ...result,
  engine: { ...engine, ...changes },
});

const exhaustAt = (temperature: number, result = settledResult): RunResult => ({
  ...result,
  settled: { ...cycle!, coldestExhaust: temperature },
});

describe('the barrel', () => {
  it.each([
    // Thin and Thick Cylinders, example 8.8.1: greatest shear 12.5 MPa, a quarter of the hoop stress (seen).
    [1.5e6, 1, 0.015, 50e6],
    // Inner radius 500 mm, wall 10 mm, 5 MPa: 250 MPa (seen).
    [5e6, 1, 0.01, 250e6],
    // Water main of 0.8 m under 100 m of head, 20 MPa allowed: wall 2.0 cm (seen).
    [1e6, 0.8, 0.02, 20e6],
  ])('%s Pa in %s m with a wall of %s m: %s Pa (seen)', (pressure, bore, wall, stress) => {
    expect(barrelHoopStress(pressure, bore, wall) / stress).toBeCloseTo(1, 12);
  });

  // 8 bar in 40 mm: 0.8·40/(2·t) MPa.
  it.each([
    ['brass', 0.5e-3, '32 MPa', 'note'],
    ['brass', 0.49e-3, '33 MPa', 'danger'],
    ['cast iron', 1e-3, '16 MPa', 'danger'],
    ['cast iron', 1.2e-3, '13 MPa', 'note'],
    ['steel', 0.5e-3, '32 MPa', 'note'],
  ] as const)('of %s with a wall of %s m carries %s: a %s', (name, wallThickness, stress, severity) => {
    const caution = topic(
      withEngine({ barrel: { material: barrelMaterial(name), wallThickness } }),
      'Barrel',
    );
    expect(caution?.severity).toBe(severity);
    expect(caution?.text).toContain(`carries ${stress} around its wall`);
    expect(caution?.text).toMatch(/common practice, no source.*local code/u);
  });

  it('of PVC is refused with any wall or none', () => {
    for (const wallThickness of [undefined, 20e-3]) {
      const caution = topic(
        withEngine({ barrel: { material: barrelMaterial('PVC'), wallThickness } }),
        'Barrel',
      );
      expect(caution?.severity).toBe('danger');
      expect(caution?.text).toMatch(/refused, whatever its wall.*splinters/u);
    }
  });

  it('is left alone without a wall, and not judged without a material', () => {
    expect(topic(settledResult, 'Barrel')).toBeUndefined();
    const unknown = topic(withEngine({ barrel: { material: undefined, wallThickness: 1e-3 } }), 'Barrel');
    expect(unknown).toMatchObject({
      severity: 'caution',
      text: expect.stringContaining('not given') as string,
    });
  });

  it('has a strength for every material but plastic', () => {
    const refused = barrelMaterialNames.filter((name) => barrelMaterial(name).strength === undefined);
    expect(refused).toEqual(['PVC']);
  });
});

describe('a pressure rating', () => {
  it.each([
    [8, 'note', 'It bears that.'],
    [7.9, 'danger', 'Nothing but the regulator'],
    [3.9, 'danger', 'does not even bear'],
  ])('of %s bar gauge against 4 at the engine and 8 in the receiver: %s', (bar, severity, words) => {
    const caution = topic(withEngine({ ratedPressure: room + bar * 1e5 }), 'Pressure rating');
    expect(caution?.severity).toBe(severity);
    expect(caution?.text).toContain(words);
  });

  it('is not trusted where nobody says what stands in front of the regulator', () => {
    const { receiver: _receiver, ...alone } = engine;
    const unknown = { ...settledResult, engine: { ...alone, ratedPressure: room + 5e5 } };
    expect(topic(unknown, 'Pressure rating')?.severity).toBe('caution');
    expect(topic(unknown, 'Pressure parts')?.text).toContain(
      '4.00 bar gauge, the pressure set; what stands in front',
    );
    expect(topic(settledResult, 'Pressure parts')?.text).toContain(
      '8.00 bar gauge, the highest pressure there is',
    );
  });

  it('is held against the inlet of a regulator too', () => {
    const high = withEngine({ ratedPressure: room + 9e5, regulatorInlet: room + 10e5 });
    expect(topic(high, 'Pressure rating')?.severity).toBe('danger');
    expect(topic(high, 'Pressure parts')?.text).toContain('10.00 bar gauge, the highest pressure there is');
  });

  it('is nothing to speak of when it was not given', () => {
    expect(topic(settledResult, 'Pressure rating')).toBeUndefined();
  });
});

describe('the compressor', () => {
  it('is spoken of when it runs for longer than its maker allows, and only then', () => {
    expect(topic(settledResult, 'Compressor duty')).toBeUndefined();
    expect(topic(noStartResult, 'Compressor duty')).toBeUndefined();
    expect(topic(saggingResult, 'Compressor duty')?.text).toContain('100 % of the time');
  });
});

describe('icing', () => {
  // The moisture of the synthetic result lays down frost below 260.2 K and carries 10 g of water an hour.
  it('is expected below the frost point, with the water an hour', () => {
    const caution = topic(exhaustAt(241.6), 'Icing');
    expect(caution?.severity).toBe('caution');
    expect(caution?.text).toMatch(
      /as cold as −32 °C.*carries 10 g of water an hour.*below −13 °C: expect ice/u,
    );
  });

  it('is not expected between the frost point and freezing, nor from a dry gas', () => {
    expect(topic(exhaustAt(265), 'Icing')).toMatchObject({ severity: 'note' });
    const { moisture: _moisture, ...dry } = settledResult;
    const nitrogen = { ...engine.gas, name: 'nitrogen', origin: 'bottles' } as const;
    const bottled = exhaustAt(241.6, { ...dry, engine: { ...engine, gas: nitrogen } });
    expect(topic(bottled, 'Icing')?.text).toContain('Dry nitrogen brings no water');
  });

  it('is no matter above freezing or at rest', () => {
    expect(topic(exhaustAt(275), 'Icing')).toBeUndefined();
    expect(topic(noStartResult, 'Icing')).toBeUndefined();
  });
});

describe('noise', () => {
  it('chokes above 1/0.5283 = 1.893 times the room (derived)', () => {
    expect(releaseRatio(1.9 * room, engine).choked).toBe(true);
    expect(releaseRatio(1.88 * room, engine)).toMatchObject({ choked: false });
  });

  it('has one release a turn for each working end: 33 rad/s is 5.3 a second (derived)', () => {
    const [end] = cycle!.profile.ends;
    expect(releasesPerSecond(cycle!)).toBeCloseTo(5.252, 3);
    const twin = { ...cycle!, profile: { ...cycle!.profile, ends: [end, end] as const } };
    expect(releasesPerSecond(twin)).toBeCloseTo(10.504, 3);
  });

  it('says how it leaves, asks for ear protection and names no decibels', () => {
    const loud = topic(settledResult, 'Noise');
    expect(loud).toMatchObject({
      severity: 'caution',
      text: expect.stringContaining('speed of sound') as string,
    });
    const high = topic(withEngine({ atmosphericPressure: 2e5 }), 'Noise');
    expect(high).toMatchObject({ severity: 'note', text: expect.stringContaining('puffs') as string });
    for (const caution of [loud, high]) {
      expect(caution?.text).toContain('Wear ear protection');
      expect(caution?.text).not.toMatch(/\bdB\b/u);
    }
    expect(topic(noStartResult, 'Noise')).toBeUndefined();
  });
});

describe('bottled gas', () => {
  const bottled = { gas: { ...engine.gas, name: 'nitrogen', origin: 'bottles' } } as const;

  it('takes V·ln(20.9/19.5)/V̇: 20 m³ at 100 L/min in 13.9 minutes (derived)', () => {
    expect(timeToOxygenDeficiency(20, 0.1 / 60) / 60).toBeCloseTo(13.87, 2);
  });

  it('is a danger, running or hissing at rest, and air is not', () => {
    for (const result of [settledResult, noStartResult]) {
      const caution = topic(withEngine(bottled, result), 'Bottled gas');
      expect(caution?.severity).toBe('danger');
      expect(caution?.text).toMatch(
        /^Nitrogen cannot be breathed.*a closed shed of 20 m³ .* minutes.*Local codes/u,
      );
      expect(topic(result, 'Bottled gas')).toBeUndefined();
    }
  });
});
