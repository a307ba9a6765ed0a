/** An estimate in cells: name, value, and the ends of its 95 % interval. */
import type { Estimate } from '../../measure/finding.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { figure } from '../../verdict/figures.ts';

/** Name, value and both ends, each with its unit. */
export function estimateRow({ name, value, low, high, dimension, suffix }: Estimate): readonly string[] {
  const behind = suffix === undefined ? '' : ` ${suffix}`;
  const cell = (own: number): string => {
    if (!Number.isFinite(own)) return 'no bound';
    return (dimension === 'number' ? figure(own) : formatQuantity(own, dimension, { digits: 3 })) + behind;
  };
  return [name, cell(value), cell(low), cell(high)];
}
