import { Command, Option } from 'commander';
import { reduce } from '../../shared/reduce.ts';
import { type Reference, references } from '../../shared/sheet/sheet.ts';
import { readSheet } from './input.ts';
import { resultSentences } from './result-sentences.ts';

/** `wayscribe reduce FILE`: from a sheet or a recording to its result, printed only when it is whole. */
export function reduceCommand(): Command {
  return new Command('reduce')
    .description('compute what a sheet or a recording comes to')
    .argument('<file>', 'a survey sheet (JSON or CSV), or a recording')
    .option('--json', 'print the whole result as JSON: heights in µm, slopes in µm/m')
    .addOption(new Option('--reference <line>', 'what heights are shown against').choices(references))
    .action(async (file: string, { json, reference }: { json?: boolean; reference?: Reference }) => {
      const sheet = await readSheet(file);
      const result = reduce(sheet, reference ? { reference } : {});
      const text = json ? JSON.stringify(result, null, 2) : resultSentences(result, sheet.title).join('\n');
      process.stdout.write(`${text}\n`);
    });
}
