/** The friction that a coasting engine of the model has, found again from its speed alone. */
import { expect, it } from 'vitest';
import { coastFit } from '../../src/measure/coast-fit.ts';
import { meanInertia, motoringTorques } from '../../src/measure/motoring.ts';
import { givenFlywheel } from '../../src/parts/flywheels/given.ts';
import { constantLoad } from '../../src/parts/loads/constant.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { expectWithin } from '../support/expect-within.ts';
import { referenceSpec, RPM } from '../support/reference-engine.ts';

it('dry and viscous friction of the reference engine, its pumping taken out', () => {
  const base = referenceSpec();
  const { pressure, temperature } = base.atmosphere;
  const spec = {
    ...base,
    friction: { ...base.friction, running_torque: 0.5, breakaway_torque: 0.5, viscous_torque: 4e-3 },
    supply: {
      ...base.supply,
      // A hair above the room, so that the scenario is one that may be run.
      pressure: pressure + 1,
      hose: { ...base.supply.hose, length: 0.01 },
    },
    flywheel: givenFlywheel.choose({ moment_of_inertia: 0.5 }),
    load: constantLoad.choose({ torque: 0 }),
    start: { crank_angle: 0, hand_speed: 400 * RPM },
    run: { longest_time: 6 },
  };
  const { trace } = runEngine(spec);
  // Mean speed of each turn, at the middle of its time.
  const turns: { readonly time: number; readonly speed: number }[] = [];
  let from = 0;
  for (let i = 0; i < trace.time.length; i += 1) {
    const angle = trace.crankAngle[i]! - trace.crankAngle[from]!;
    if (angle < 2 * Math.PI - 1e-9) continue;
    const [t0, t1] = [trace.time[from]!, trace.time[i]!];
    turns.push({ time: (t0 + t1) / 2, speed: angle / (t1 - t0) });
    from = i;
  }
  const fast = turns.filter(({ speed }) => speed > 120 * RPM);
  expect(fast.length).toBeGreaterThan(6);
  const speeds = [100, 150, 200, 250, 300, 350, 400].map((own) => own * RPM);
  const motoring = motoringTorques(spec, { pressure, temperature }, speeds)!;
  const fit = coastFit({
    time: fast.map(({ time }) => time - fast[0]!.time),
    speed: fast.map(({ speed }) => speed),
    error: 0.02,
    inertia: meanInertia(spec),
    pumping: speeds.map((speed, i) => ({ speed, torque: motoring[i]!.pumping })),
  });
  const others = motoring[3]!.piston + motoring[3]!.valveGear;
  const at = 250 * RPM;
  expectWithin(fit.dry + fit.viscous * at, 0.5 + 4e-3 * at + others, 0.03);
});
