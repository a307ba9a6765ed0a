/** An engine put together from its description: parts built, passages listed, constants ready. */
import type { Gas } from '../gas/gas.ts';
import { gasNamed } from '../gas/registry.ts';
import type { CrankTrain } from '../parts/crank-train.ts';
import { clearanceVolume, crankTrain, pistonArea, sweptVolume, type Cylinder } from '../parts/cylinder.ts';
import { partContext, type EngineSpec } from '../parts/engine-description.ts';
import type { Flywheel } from '../parts/flywheels/flywheel.ts';
import type { Friction } from '../parts/friction.ts';
import type { Load } from '../parts/loads/load.ts';
import type { Passage, Port } from '../parts/passage.ts';
import { chestVolume, hosePassage } from '../parts/supply.ts';
import type { ValveGear } from '../parts/valve-gears/valve-gear.ts';
import type { WallHeat } from '../parts/wall-heat/wall-heat.ts';

export interface GasState {
  readonly pressure: number;
  readonly temperature: number;
}

export interface Engine {
  readonly gas: Gas;
  readonly atmosphere: GasState;
  readonly supply: GasState;
  readonly cylinder: Cylinder;
  readonly crank: CrankTrain;
  readonly pistonArea: number;
  readonly sweptVolume: number;
  readonly clearanceVolume: number;
  readonly chestVolume: number;
  readonly reciprocatingMass: number;
  readonly wallHeat: WallHeat;
  readonly flywheel: Flywheel;
  readonly friction: Friction;
  readonly load: Load;
  readonly valveGear: ValveGear;
  readonly admission: Port;
  readonly exhaust: Port;
  /** Every passage: the hose first, then ports, sealing gaps, other leaks. */
  readonly passages: readonly Passage[];
  /** Crank angles [0, 2π), ascending, where the right-hand side kinks; always with 0 and π. */
  readonly edges: readonly number[];
}

function portOf(gear: ValveGear, role: Port['role']): Port {
  const found = gear.ports.find((candidate) => candidate.role === role);
  if (found === undefined) throw new Error(`the valve gear has no ${role} port`);
  return found;
}

/** Dead centres, where the piston friction changes hands, and the gear's own edges. */
function engineEdges(gear: ValveGear): number[] {
  const all = [0, Math.PI, ...gear.edges].sort((a, b) => a - b);
  return all.filter((angle, i) => i === 0 || angle - all[i - 1]! > 1e-9);
}

/** Builds a description that has passed its checks. */
export function buildEngine(spec: EngineSpec): Engine {
  const context = partContext(spec);
  const valveGear = spec.valve_gear.build(context);
  const { cylinder } = spec;
  return {
    gas: gasNamed(spec.gas),
    atmosphere: spec.atmosphere,
    supply: {
      pressure: spec.supply.pressure,
      temperature: spec.supply.temperature ?? spec.atmosphere.temperature,
    },
    cylinder,
    crank: crankTrain(cylinder),
    pistonArea: pistonArea(cylinder),
    sweptVolume: sweptVolume(cylinder),
    clearanceVolume: clearanceVolume(cylinder),
    chestVolume: chestVolume(spec.supply),
    reciprocatingMass: cylinder.reciprocating_mass,
    wallHeat: cylinder.wall_heat.build(context),
    flywheel: spec.flywheel.build(context),
    friction: spec.friction,
    load: spec.load.build(context),
    valveGear,
    admission: portOf(valveGear, 'admission'),
    exhaust: portOf(valveGear, 'exhaust'),
    passages: [
      hosePassage(spec.supply, context.gas),
      ...valveGear.ports,
      ...valveGear.sealingGaps,
      ...spec.leaks.map((leak) => leak.build(context)),
    ],
    edges: engineEdges(valveGear),
  };
}
