/** Minutes of supply as a table: receiver, supply, speed and compressor over time. */
import type { SupplyTrace } from '../../run/supply/supply-trace.ts';
import { csvText } from './table.ts';
import { inBar, inRpm, same } from './units.ts';

/** The text of `supply.csv`; its columns are explained in reports/README.md. */
export function supplyCsv(trace: SupplyTrace): string {
  return csvText([
    { header: 'time_s', values: trace.time, convert: same },
    { header: 'receiver_pressure_bar_abs', values: trace.receiverPressure, convert: inBar },
    { header: 'supply_pressure_bar_abs', values: trace.supplyPressure, convert: inBar },
    { header: 'speed_rpm', values: trace.speed, convert: inRpm },
    { header: 'compressor_on', values: trace.compressorOn, convert: same },
  ]);
}
