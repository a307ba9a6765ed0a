/** What the answers of a study must tell besides the settled turn. */
import type { Study, Wanted } from '../../index.ts';

export function wantedOf({ spec }: Study): Wanted {
  const needs = spec.conditions.map((own) => own.build(null).needs);
  return { starts: needs.includes('starts'), cams: needs.includes('cams') };
}
