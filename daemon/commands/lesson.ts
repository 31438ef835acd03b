import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Command } from 'commander';
import { WayscribeError } from '../../shared/errors.ts';
import { whyUnreadable } from '../unreadable.ts';

/** `wayscribe lesson`: help for whoever writes a lesson beside a recording of their own. */
export function lessonCommand(): Command {
  return new Command('lesson')
    .description('check a lesson that was written beside a recording')
    .addCommand(checkCommand());
}

/** Exit status 0 when the lesson is sound and fits its recording, 2 with the place of the first mistake. */
function checkCommand(): Command {
  return new Command('check')
    .description('check a lesson: its form, its moments, and whether it fits its recording')
    .argument('<file>', 'a lesson')
    .argument('[recording]', 'its recording; left out, the one of its name beside it')
    .action(async (file: string, recording?: string) => {
      const { proveLesson, readLesson } = await import('../../shared/lesson/lesson.ts');
      const { readRecording } = await import('../recording/reader.ts');
      const lesson = readLesson(await textOf(file));
      const beside = recording ?? join(dirname(file), `${lesson.recording}.jsonl`);
      const { header, events } = await readRecording(beside);
      proveLesson(lesson, header, events.at(-1)?.seq ?? 0);
      const stops = lesson.moments.filter(({ is }) => is === 'stop').length;
      const notes = lesson.moments.length - stops;
      console.log(`"${lesson.title}" is sound and fits ${beside}; notes: ${notes}, questions: ${stops}.`);
    });
}

async function textOf(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    throw new WayscribeError('lesson.invalid', file, whyUnreadable(error), 'name the file of a lesson');
  }
}
