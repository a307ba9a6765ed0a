/** What flat and round slide valves have in common once their port's length and their leaks are known. */
import { writeSineCosine } from '../../numerics/sine-cosine.ts';
import type { PartContext } from '../part-context.ts';
import { port, type Passage } from '../passage.ts';
import {
  admissionBends,
  admissionOpening,
  angleOfAdvance,
  exhaustBends,
  exhaustOpening,
  overTravel,
  slideValveEdges,
  slideValveEvents,
  type SlideValve,
} from './slide-valve.ts';
import type { DerivedSize, GearPressures, ValveGear } from './valve-gear.ts';

export interface MountedSlideValve {
  readonly valve: SlideValve;
  /** Length of the port across the travel [m]. */
  readonly portLength: number;
  readonly dischargeCoefficient: number;
  /** Force that drags the valve along [N] at a displacement [m]; its kinks are those of the openings. */
  readonly rubbingForce: (displacement: number, pressures: GearPressures) => number;
  /** The eccentric falls over to the place for the other direction. */
  readonly slips: boolean;
  /** Height of the sealing gap [m]; zero seals perfectly. */
  readonly gapHeight: number;
  readonly sealingGaps: readonly Passage[];
}

function sizes(valve: SlideValve): DerivedSize[] {
  const { eccentricity, portWidth, steamLap, exhaustLap } = valve;
  return [
    { label: 'angle of advance of the eccentric', value: angleOfAdvance(valve), dimension: 'angle' },
    {
      label: 'land of the valve that covers the cylinder port',
      value: portWidth + steamLap + exhaustLap,
      dimension: 'length',
    },
    {
      label: 'greatest opening of the port to the chest',
      value: admissionOpening(valve, eccentricity),
      dimension: 'length',
    },
    {
      label: 'greatest opening of the port to the exhaust',
      value: exhaustOpening(valve, -eccentricity),
      dimension: 'length',
    },
  ];
}

export function slideValveGear(mounted: MountedSlideValve, { gas }: PartContext): ValveGear {
  const { valve, rubbingForce } = mounted;
  const advance = angleOfAdvance(valve);
  const [sine, cosine] = [new Float64Array(1), new Float64Array(1)];
  const areaPerOpening = mounted.dischargeCoefficient * mounted.portLength;
  const toChest = overTravel(
    valve,
    (s) => areaPerOpening * admissionOpening(valve, s),
    admissionBends(valve),
  );
  const toExhaust = overTravel(valve, (s) => areaPerOpening * exhaustOpening(valve, s), exhaustBends(valve));
  const gear: ValveGear = {
    ports: [
      port(gas, 'admission', { name: 'port open to the chest', from: 'chest', to: 'cylinder' }, toChest),
      port(
        gas,
        'exhaust',
        { name: 'port open to the exhaust', from: 'cylinder', to: 'atmosphere' },
        toExhaust,
      ),
    ],
    sealingGaps: mounted.sealingGaps,
    edges: slideValveEdges(valve, mounted.gapHeight),
    events: slideValveEvents(valve),
    derivedSizes: sizes(valve),
    // The rod's pull through the lever |ds/dθ| of the eccentric.
    dragTorque: (angle, _speed, pressures) => {
      writeSineCosine(angle + advance, sine, cosine, 0);
      const displacement = valve.eccentricity * sine[0]!;
      return rubbingForce(displacement, pressures) * valve.eccentricity * Math.abs(cosine[0]!);
    },
  };
  // Over on its other stop the eccentric stands as far before the crank, seen that way round, as it did before.
  return mounted.slips ? { ...gear, reverse: { gear: () => gear, serves: true } } : gear;
}
