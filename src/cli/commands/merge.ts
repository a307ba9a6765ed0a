/** `tickover merge FOLDER`: the shards of a sweep become the files that one sweep of everything would have written. */
import { mergeShards } from '../studies/merge-shards.ts';
import { EXIT } from '../exit-codes.ts';
import type { Command } from './command.ts';

export const merge: Command = (args, { print, guarded }) =>
  args.command(
    'merge <folder>',
    'Put the shards of a sweep together.',
    (own) =>
      own
        .positional('folder', {
          type: 'string',
          demandOption: true,
          describe: 'Folder with all shards of one sweep',
        })
        .example('$0 merge reports/press-cut-off', 'after sweep --shard 1/4 to 4/4'),
    ({ folder }) =>
      guarded(async () => {
        const { engines, paths } = await mergeShards(folder);
        print(`${engines} engines.\n\nRows: ${paths.join('\n      ')}`);
        return EXIT.ran;
      }),
  );
