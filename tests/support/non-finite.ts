/** Where in a tree of values a number is not finite: ["settled.work.load"]. */
export function nonFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (value instanceof Float64Array) return value.every(Number.isFinite) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    nonFinite(inner, path === '' ? key : `${path}.${key}`),
  );
}
