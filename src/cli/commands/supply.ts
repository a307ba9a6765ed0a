/** `tickover supply FILE`: for how long receiver and compressor keep the engine running, and what would suffice. */
import { supplyJson, supplyTimeline, supplyVerdict, type EngineSpec, type UnitSystem } from '../../index.ts';
import { EXIT, InputError, type ExitCode } from '../exit-codes.ts';
import { faults } from '../faults.ts';
import { jsonText } from '../json-text.ts';
import { unitsOption } from '../options.ts';
import { defaultFolder, writeSupply } from '../report-files.ts';
import { engineFromFile } from '../scenario-file.ts';
import { terminalText } from '../terminal-verdict.ts';
import type { Command } from './command.ts';

interface SupplyOptions {
  readonly file: string;
  readonly hours: number;
  readonly out: string | undefined;
  readonly json: boolean;
  readonly units: UnitSystem;
}

const HOUR = 3600;

/** A minute to two days [h]. */
const SHORTEST = 1 / 60;
const LONGEST = 48;

function compressorOf(spec: EngineSpec, file: string): NonNullable<EngineSpec['compressor']> {
  if (spec.compressor) return spec.compressor;
  throw new InputError(
    `${file}: describes no compressor, so there are no minutes of supply to tell. Describe the one in your shed, for ` +
      'example:\n\n' +
      'compressor:\n  free_air_delivery: 150 L/min\n  receiver_volume: 50 L\n  cut_in: 6 bar gauge\n' +
      '  cut_out: 8 bar gauge\n  duty_rating: 50 %',
  );
}

async function supplyOfFile(options: SupplyOptions, print: (text: string) => void): Promise<ExitCode> {
  const { file, hours, out, json, units } = options;
  if (!(hours >= SHORTEST && hours <= LONGEST))
    throw new InputError(
      `--hours: expected hours from 1/60 to ${LONGEST}, such as 2 or 0.5; found ${Number.isNaN(hours) ? 'no number' : hours}.`,
    );
  const spec = engineFromFile(file);
  const timeline = supplyTimeline(spec, compressorOf(spec, file), hours * HOUR);
  const paths = await writeSupply(timeline, out ?? defaultFolder(file));
  if (json) print(jsonText(supplyJson(timeline)));
  else {
    const good = timeline.runs && timeline.end.kind === 'cycles';
    print(terminalText({ title: timeline.title, good, ...supplyVerdict(timeline, units) }));
    print(`\nWritten: ${paths.join('\n         ')}`);
  }
  return !timeline.runs && faults.includes(timeline.outcome.kind) ? EXIT.fault : EXIT.ran;
}

export const supply: Command = (args, { print, guarded }) =>
  args.command(
    'supply <file>',
    'Tell how long receiver and compressor keep the engine running.',
    (own) =>
      own
        .positional('file', { type: 'string', demandOption: true, describe: 'Scenario file (YAML)' })
        .option('hours', {
          type: 'number',
          default: 2,
          requiresArg: true,
          describe: 'How long you want to run',
        })
        .option('out', {
          type: 'string',
          requiresArg: true,
          describe: 'Folder for the table [reports/<scenario>]',
        })
        .option('json', {
          type: 'boolean',
          default: false,
          describe: 'Print one JSON object instead of text',
        })
        .options(unitsOption)
        .example('$0 supply scenarios/cider-press.yaml --hours 4', 'an afternoon of pressing'),
    ({ file, hours, out, json, units }) =>
      guarded(() => supplyOfFile({ file, hours, out, json, units }, print)),
  );
