/** Parts take a fit or two finishes for the gap they come to, say what is to be made, and refuse what cannot be. */
import { describe, expect, it } from 'vitest';
import type { Clearance } from '../../../src/kinds/parameter.ts';
import { partContext } from '../../../src/parts/engine-description.ts';
import { clearanceComplaints, clearanceOf, fitSizes } from '../../../src/parts/fits/clearance.ts';
import { leaks } from '../../../src/parts/leaks/registry.ts';
import type { PartContext } from '../../../src/parts/part-context.ts';
import { spoolGear, referenceSpec } from '../../support/reference-engine.ts';
import { valveGears } from '../../../src/parts/valve-gears/registry.ts';
import { formatQuantity } from '../../../src/quantity/format.ts';
import { chosen } from '../../support/chosen.ts';

const fit: Clearance = { by: 'fit', hole: 'H7', shaft: 'g6' };
const finishes: Clearance = { by: 'process', bore: 'honed', rod: 'lapped' };
const gapOf = (diameter: number, own: Clearance): Clearance => ({
  by: 'gap',
  gap: clearanceOf(diameter, own).mean,
});

const context = partContext(referenceSpec({ cylinder: { action: 'double', piston_rod_diameter: 8e-3 } }));

/** Flow of a leak at 4 bar against the room. */
const flowOf = (kind: string, clearance: Clearance, engine: PartContext): number =>
  chosen(leaks, kind, { clearance, length: 0.02 }).build(engine).massFlow(0, 4e5, 290, 1e5, 290, 0);

describe('a leak with a fit', () => {
  it.each([
    ['plain piston', 50e-3],
    ['rod gland', 8e-3],
  ])('%s: is that of its mean gap, on a diameter of %s m', (kind, diameter) => {
    for (const own of [fit, finishes])
      expect(flowOf(kind, own, context)).toBe(flowOf(kind, gapOf(diameter, own), context));
  });

  it('is refused when its diameter is not in the tables', () => {
    const thick = { ...context, bore: 0.06, rodDiameter: 3e-3 };
    for (const kind of ['plain piston', 'rod gland']) {
      const own = chosen(leaks, kind, { clearance: fit, length: 0.02 });
      expect(own.complaints(context)).toEqual([]);
      expect(own.complaints(thick)).toMatchObject([{ path: ['clearance'] }]);
    }
  });
});

describe('a valve with a fit', () => {
  const gear = spoolGear();
  const spool = (name: string) => gear.values[name] as Readonly<Record<string, unknown>>;
  const withClearance = (admission: Clearance, exhaust: Clearance) =>
    chosen(valveGears, 'cam-driven spools', {
      ...gear.values,
      admission: { ...spool('admission'), clearance: admission },
      exhaust: { ...spool('exhaust'), clearance: exhaust },
    });
  const flows = (own: ReturnType<typeof withClearance>): number[] =>
    own.build(context).sealingGaps.map((gap) => gap.massFlow(1, 4e5, 290, 1e5, 290, 0));

  it('leaks like one with the mean gap of each diameter', () => {
    const own = withClearance(fit, finishes);
    expect(own.complaints(context)).toEqual([]);
    expect(flows(own)).toEqual(flows(withClearance(gapOf(12e-3, fit), gapOf(14e-3, finishes))));
  });

  it('says what to make, to the micrometre; a gap says nothing', () => {
    const sizesOf = (own: Clearance): Record<string, string> => {
      const gap: Clearance = { by: 'gap', gap: 8e-6 };
      const { derivedSizes } = withClearance(own, gap).build(context);
      const lengths = derivedSizes.filter(({ dimension }) => dimension === 'length');
      return Object.fromEntries(
        lengths.map(({ label, value, dimension, digits = 4 }) => [
          label,
          formatQuantity(value, dimension, { digits }),
        ]),
      );
    };
    expect(sizesOf(fit)).toEqual({
      'smallest bore for the admission spool, H7/g6': '12 mm',
      'largest bore for the admission spool, H7/g6': '12.018 mm',
      'smallest admission spool, H7/g6': '11.983 mm',
      'largest admission spool, H7/g6': '11.994 mm',
      'mean radial clearance of the admission spool': '10.25 µm',
    });
    expect(sizesOf({ by: 'gap', gap: 8e-6 })).toEqual({});
  });

  it('is refused with a diameter that is not its own', () => {
    const [complaint] = withClearance({ ...fit, nominal: 14e-3 }, fit).complaints(context);
    expect(complaint).toMatchObject({ path: ['admission', 'clearance'], received: 'one for 14 mm' });
    expect(withClearance({ ...fit, nominal: 12e-3 }, fit).complaints(context)).toEqual([]);
  });

  it('a piston valve too', () => {
    const own = chosen(valveGears, 'piston valve', {
      travel: 10e-3,
      steam_lap: 2.2e-3,
      lead: 0.3e-3,
      port_width: 2e-3,
      bar_width: 4e-3,
      sleeve_bore: 14e-3,
      clearance: finishes,
    });
    expect(own.complaints(context)).toEqual([]);
    const labels = own.build(context).derivedSizes.map(({ label }) => label);
    expect(labels).toContain('largest bore for the valve, honed / lapped');
  });
});

describe('words that are in no table', () => {
  it('are a mistake of the program by the time anything is built', () => {
    expect(() => clearanceOf(0.01, { by: 'fit', hole: 'H7', shaft: 'q6' })).toThrow('not in the tables');
    expect(() => clearanceOf(0.01, { by: 'process', bore: 'filed', rod: 'drawn' })).toThrow(
      'not in the tables',
    );
    expect(() => fitSizes('spool', 0.08, fit)).toThrow('do not go there');
    expect(clearanceComplaints(['clearance'], 'bore', 0.08, fit)).toHaveLength(1);
  });
});
