/**
 * A valve gear that is left as it is while the engine turns the other way. Crank angles count from the dead centre in the
 * direction of running, so every law is read at the angle with its sign changed: what opened at θ = opens shuts at −opens.
 */
import { wrappedAngle } from '../crank-positions.ts';
import { openingLaw, type Opening, type Passage, type Port } from '../passage.ts';
import { orderedEdges, type ValveGear } from './valve-gear.ts';

/** A table cannot be read backwards, a law can. */
function mirroredOpening(opening: Opening): Opening {
  if (typeof opening === 'number') return opening;
  const law = openingLaw(opening);
  return (angle, speed) => law(-angle, speed);
}

const mirroredPassage = (passage: Passage): Passage => ({
  ...passage,
  ...(passage.flow ? { flow: { ...passage.flow, opening: mirroredOpening(passage.flow.opening) } } : {}),
  massFlow: (angle, pFrom, tFrom, pTo, tTo, speed) => passage.massFlow(-angle, pFrom, tFrom, pTo, tTo, speed),
});

const mirroredPort = (port: Port): Port => ({
  ...port,
  ...mirroredPassage(port),
  role: port.role,
  effectiveArea: (angle, speed) => port.effectiveArea(-angle, speed),
});

export function mirrored(gear: ValveGear): ValveGear {
  const { admission, cutOff, release, compression } = gear.events;
  return {
    ...gear,
    ports: gear.ports.map(mirroredPort),
    sealingGaps: gear.sealingGaps.map(mirroredPassage),
    edges: orderedEdges(gear.edges.map((edge) => -edge)),
    events: {
      admission: wrappedAngle(-cutOff),
      cutOff: wrappedAngle(-admission),
      release: wrappedAngle(-compression),
      compression: wrappedAngle(-release),
    },
    dragTorque: (angle, speed, pressures) => gear.dragTorque(-angle, speed, pressures),
  };
}
