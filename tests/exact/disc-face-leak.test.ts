/**
 * Leak across the faces of a disc valve, as built, against a numerical solution of Laplace's equation on the whole face:
 * holes under pressure, shaft and rim open to the room, no land divided up beforehand.
 */
import { describe, expect, it } from 'vitest';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { partContext } from '../../src/parts/engine-description.ts';
import { rotaryDisc } from '../../src/parts/valve-gears/rotary-disc.ts';
import { expectWithin } from '../support/expect-within.ts';
import { circle, openPlane, shapeFactors, type Edge } from '../support/field-solution.ts';
import { idealEngine } from '../support/ideal-engine.ts';

interface Face {
  readonly admission: { readonly hole: number; readonly pitch: number };
  readonly exhaust: { readonly hole: number; readonly pitch: number };
  readonly shaft: number;
  readonly rim: number;
}

/** Diameters, pitch radii; millimetres. */
const faces: readonly Face[] = [
  { admission: { hole: 8, pitch: 38 }, exhaust: { hole: 9, pitch: 24 }, shaft: 12, rim: 100 },
  { admission: { hole: 6, pitch: 25 }, exhaust: { hole: 7, pitch: 17 }, shaft: 10, rim: 80 },
  { admission: { hole: 6, pitch: 20 }, exhaust: { hole: 8, pitch: 30 }, shaft: 10, rim: 80 },
  { admission: { hole: 4, pitch: 8 }, exhaust: { hole: 4, pitch: 13 }, shaft: 6, rim: 36 },
];

const edge = (x: number, radius: number, behind: number, potential: number): Edge => ({
  curve: circle(x, 0, radius),
  behind: circle(x, 0, behind * radius),
  potential,
});

/** S out of the admission and the exhaust hole, which stand opposite one another. */
function fieldOf({ admission, exhaust, shaft, rim }: Face, exhaustPotential: number): readonly number[] {
  return shapeFactors(
    [
      edge(admission.pitch, admission.hole / 2, 0.6, 1),
      edge(-exhaust.pitch, exhaust.hole / 2, 0.6, exhaustPotential),
      edge(0, shaft / 2, 0.6, 0),
      edge(0, rim / 2, 1.25, 0),
    ],
    openPlane,
  );
}

/** A gap so fine that the leak is all laminar. */
const GAP = 1e-6;
const [HIGH, LOW, TEMPERATURE] = [1.2e5, 1e5, 293.15];

/** S that the built valve's leak of that name stands for. */
function builtShapeFactor({ admission, exhaust, shaft, rim }: Face, name: string): number {
  const track = (hole: number, pitch: number, opens: number) => ({
    pitch_radius: pitch * 1e-3,
    hole_diameter: hole * 1e-3,
    slot_width: hole * 1e-3,
    opens: { by: 'angle', angle: opens },
    closes: { by: 'angle', angle: opens + 2 },
  });
  const gear = rotaryDisc
    .choose({
      disc_diameter: rim * 1e-3,
      shaft_diameter: shaft * 1e-3,
      slots: 1,
      face_gap: GAP,
      discharge_coefficient: 0.7,
      body_advance: 0,
      film_viscosity: 0,
      preload_torque: 0,
      admission: track(admission.hole, admission.pitch, 0),
      exhaust: track(exhaust.hole, exhaust.pitch, 3),
    })
    .build(partContext(idealEngine({})));
  const leak = gear.sealingGaps.find((passage) => passage.name === name);
  const flow = leak!.massFlow(0, HIGH, TEMPERATURE, LOW, TEMPERATURE, 0);
  const unit = 24 * dryAir.viscosity(TEMPERATURE) * dryAir.specificGasConstant * TEMPERATURE;
  return (flow * unit) / (GAP ** 3 * (HIGH ** 2 - LOW ** 2));
}

describe.each(faces)('a disc of $rim mm on a shaft of $shaft mm', (face) => {
  it('front: from the chest hole to room, shaft and exhaust hole', () => {
    const [fromAdmission] = fieldOf(face, 0);
    expectWithin(builtShapeFactor(face, 'across the front face'), fromAdmission!, 0.05);
  });

  it('back: from both cylinder holes to room and shaft', () => {
    const [fromAdmission, fromExhaust] = fieldOf(face, 1);
    expectWithin(builtShapeFactor(face, 'across the back face'), fromAdmission! + fromExhaust!, 0.05);
  });

  it('takes in at shaft and rim what it gives out at the holes', () => {
    const total = fieldOf(face, 1).reduce((sum, one) => sum + one, 0);
    expect(Math.abs(total)).toBeLessThan(1e-6);
  });
});
