import { join } from 'node:path';
import type { JobFolder } from '../../daemon/job/job-folder.ts';
import { RecordingWriter } from '../../daemon/recording/writer.ts';
import type { NewEvent } from '../../shared/session/events.ts';
import type { Session } from '../../shared/session/fold.ts';
import { Conductor, hastyPace, type MadeUp } from './conduct.ts';

interface SurveyInto extends MadeUp {
  /** What else is written into the recording, after its walk. */
  readonly also?: (session: Session) => NewEvent[];
}

/** Conducts a survey in made-up time, writes its recording into the folder of a job, and adds it to the job. */
export async function surveyInto(
  folder: JobFolder,
  stamp: { readonly at: string; readonly by: string },
  { also, ...madeUp }: SurveyInto,
): Promise<void> {
  const { surface, round } = madeUp.setup;
  const id = `${surface} ${round}`.replaceAll(' ', '-');
  const conductor = await Conductor.of({ id, pace: hastyPace, ...madeUp });
  await conductor.walk();
  for (const event of also?.(conductor.session) ?? []) await conductor.keeper.record(event);
  await conductor.end();
  const writer = await RecordingWriter.create(join(folder.path, `${id}.jsonl`), conductor.header);
  for (const { seq: _, t: at, m, ...event } of conductor.events) {
    await writer.append(event, { t: at, m }, { durable: false });
  }
  await writer.close();
  await folder.adopt(`${id}.jsonl`, { ...stamp, surface, round, link: writer.link });
}
