/**
 * The quick tests by which `npm run mutation` judges one folder, src/gas, src/parts or src/run; slow ones would cost hours
 * there. Modules are loaded once for all of them.
 */
import everything from './vitest.config.ts';

const quick: Readonly<Record<string, readonly string[]>> = {
  gas: [
    'published/{adiabatic-expansion,air-properties,choked-flow,gap-leakage,gases,hose,humid-air,orifice-table,pressure-decay,sonic-conductance,tank-blow-down}',
    'exact/{conductance-in-series,orifice-decay,plane-films,pressure-decay}',
    'contracts/{passages,small-parts}',
    'laws/{another-gas,moisture}',
    'unit/gas/*',
    'unit/parts/regulator',
    'unit/measure/pressure-decay',
  ],
  parts: [
    'exact/{disc-face-leak,disc-overlap,double-acting,oscillating-train,plane-films,several-cylinders,spool-mouth}',
    'published/{cam-laws,cam-motion,compressor-clearance,fits,flywheel,receiver,slider-crank,springs,valve-diagram}',
    'contracts/{descriptions,passages,small-parts}',
    'unit/parts/**/*',
  ],
  run: ['unit/run/**/*', 'unit/model/*', 'exact/{closed-cylinder,coast-down,receiver-course}'],
};

const area = process.env['TICKOVER_MUTATE'] ?? 'gas';
const tests = quick[area] ?? [];

const include = tests.map((name) => `tests/${name}.test.ts`);

export default { ...everything, test: { ...everything.test, isolate: false, include } };
