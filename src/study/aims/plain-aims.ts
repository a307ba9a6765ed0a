/** Aims that need no more than a name. */
import { kindOf } from '../../kinds/kind.ts';
import type { Aim } from './aim.ts';

const plainAim = (kind: string, doc: string, aim: Omit<Aim, 'settings'>) =>
  kindOf({ kind, doc, parameters: {}, build: (_own, _context: null): Aim => ({ ...aim, settings: [] }) });

export const highestSpeed = plainAim('highest speed', 'The highest speed with the load of the scenario.', {
  words: 'the highest speed',
  measure: 'speed',
  better: 'more',
});

export const mostPower = plainAim('most power', 'The most power into the load of the scenario.', {
  words: 'the most power',
  measure: 'power',
  better: 'more',
});

export const leastAirPerWork = plainAim(
  'least air per work',
  'The least air for the work that reaches the load.',
  {
    words: 'the least air for its work',
    measure: 'airPerWork',
    better: 'less',
  },
);

export const lastsLongest = plainAim(
  'lasts longest',
  'The longest time until a full receiver sags; the scenario must describe a compressor.',
  { words: 'the longest time from a full receiver', measure: 'lasts', better: 'more' },
);
