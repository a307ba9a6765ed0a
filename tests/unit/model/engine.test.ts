/** An engine put together: passages in their order, edges of gear and dead centres in one list. */
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../../src/model/engine.ts';
import { discGear, holeLeak, pistonLeak, referenceSpec, spoolGear } from '../../support/reference-engine.ts';

describe('an engine', () => {
  const engine = buildEngine(referenceSpec({ leaks: [pistonLeak(1e-5), holeLeak('chest to room', 1e-3)] }));

  it('has its hose first, then ports, sealing gaps and other leaks', () => {
    const { ports, sealingGaps } = engine.ends[0].valveGear;
    const parts = engine.passages.map(({ passage }) => passage);
    expect(engine.passages[0]!.role).toBe('supply');
    expect(parts.slice(1, 3)).toEqual(ports);
    expect(parts.slice(3, -2)).toEqual(sealingGaps);
    expect(engine.passages.slice(-2).map(({ name }) => name)).toEqual([
      'past the piston',
      'hole from chest to room',
    ]);
  });

  it('knows its ports by their role', () => {
    const [{ admission, exhaust, admissionPassage, exhaustPassage }] = engine.ends;
    expect(admission.role).toBe('admission');
    expect(exhaust.role).toBe('exhaust');
    expect(engine.passages[admissionPassage]!.passage).toBe(admission);
    expect(engine.passages[exhaustPassage]!.passage).toBe(exhaust);
  });

  it.each([
    ['spools', spoolGear()],
    ['a disc', discGear()],
  ])('with %s stops at both dead centres and at every edge of the gear, in order', (_name, valve_gear) => {
    const { edges, ends } = buildEngine(referenceSpec({ valve_gear }));
    expect(edges).toEqual(edges.toSorted((a, b) => a - b));
    for (const angle of [0, Math.PI, ...ends[0].valveGear.edges])
      expect(edges.filter((edge) => Math.abs(edge - angle) < 1e-9)).toHaveLength(1);
  });

  it('without its own supply temperature takes air of the room', () => {
    expect(engine.supply.temperature).toBe(engine.atmosphere.temperature);
    const cold = buildEngine(referenceSpec({ supply: { temperature: 250 } }));
    expect(cold.supply.temperature).toBe(250);
  });

  it('without an exhaust cannot be put together', () => {
    const valve_gear = spoolGear();
    const half = {
      ...valve_gear,
      build: (context: Parameters<typeof valve_gear.build>[0]) => {
        const gear = valve_gear.build(context);
        return { ...gear, ports: gear.ports.slice(0, 1) };
      },
    };
    expect(() => buildEngine(referenceSpec({ valve_gear: half }))).toThrow('no exhaust port');
  });
});
