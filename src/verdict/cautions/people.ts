/** Eyes, ears and hands: true of every engine, running or not. */
import type { Caution } from './caution.ts';

export function peopleCaution(): Caution {
  return {
    topic: 'Eyes, ears and hands',
    text:
      'Wear eye and ear protection; an open exhaust is loud and carries chips and oil. Guard crank, flywheel and valve ' +
      'gear, and never point air at anyone. An engine that stands still under air can start by itself: shut off, vent ' +
      'and block the crank before touching it. Local rules for machines and compressed air come before this list.',
    severity: 'caution',
  };
}
