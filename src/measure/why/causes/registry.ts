/** Every cause that is asked. To add one: a file beside this one and a line here. */
import type { Cause } from '../cause.ts';
import { bothPortsCause } from './both-ports.ts';
import { compressionCause } from './compression.ts';
import { compressorCause } from './compressor.ts';
import { deadStretchCause } from './dead-stretch.ts';
import { earlyAdmissionCause } from './early-admission.ts';
import { frictionCause } from './friction.ts';
import { iceCause } from './ice.ts';
import { leakCause } from './leaks.ts';
import { starvedChestCause } from './starved-chest.ts';
import { unknownLeakCause } from './unknown-leak.ts';
import { valveLeakBackCause } from './valve-leak-back.ts';
import { warmPartsCause } from './warm-parts.ts';

export const causes: readonly Cause[] = [
  leakCause,
  bothPortsCause,
  unknownLeakCause,
  deadStretchCause,
  frictionCause,
  starvedChestCause,
  earlyAdmissionCause,
  compressionCause,
  valveLeakBackCause,
  compressorCause,
  iceCause,
  warmPartsCause,
];
