/** A number that is the same only for the same rows: of everything that decides about them. */
import { createHash } from 'node:crypto';
import type { Wanted } from '../../index.ts';
import type { OpenedStudy } from './open-study.ts';

export function fingerprintOf({ study, tables }: OpenedStudy, wanted: Wanted, version: string): string {
  const { spec, text, shared } = study;
  const chosen = (own: { readonly kind: string; readonly values: unknown }): unknown => [
    own.kind,
    own.values,
  ];
  const deciding = [
    version,
    text,
    tables,
    shared.map(({ path, value }) => [path, value]),
    spec.vary.map(chosen),
    chosen(spec.sample),
    spec.conditions.map(chosen),
    wanted,
  ];
  return createHash('sha256').update(JSON.stringify(deciding)).digest('hex').slice(0, 32);
}
