/** For gears that cannot serve the crank end of a double-acting cylinder as they are described. */
import type { Complaint } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';

/** Said of a gear by its name with an article: "an oscillating cylinder". */
export const singleActingOnly = (gear: string, { doubleActing }: PartContext): Complaint[] =>
  doubleActing
    ? [
        {
          path: ['kind'],
          expected: 'another valve gear, or a single-acting cylinder',
          received: `${gear} on a double-acting one`,
        },
      ]
    : [];
