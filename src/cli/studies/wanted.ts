/** What the answers of a study must tell besides the settled turn. */
import type { Study, Wanted } from '../../index.ts';

export const wantedOf = ({ spec }: Study): Wanted => ({
  starts: spec.conditions.some((own) => own.build(null).starts === true),
});
