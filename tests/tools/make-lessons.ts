import { mkdir, rm, writeFile } from 'node:fs/promises';
import { RecordingWriter } from '../../daemon/recording/writer.ts';
import type { LessonInput } from '../../shared/lesson/lesson.ts';
import { scenarios } from './lessons/all.ts';
import { Facts } from './lessons/facts.ts';
import { goldenOf } from './lessons/golden.ts';

/**
 * Makes recordings/lessons/ anew: `npm run lessons`. Of each lesson the recording, the lesson beside it, and what it
 * comes to. Look at the difference before it is committed.
 */
const folder = 'recordings/lessons';
await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
const list = [];
for (const { id, make, tell } of scenarios) {
  const { header, events } = await make();
  const writer = await RecordingWriter.create(`${folder}/${id}.jsonl`, header);
  for (const { seq: _, t, m, ...event } of events) await writer.append(event, { t, m }, { durable: false });
  await writer.close();
  const facts = new Facts(header, events);
  const lesson: LessonInput = { lesson: 1, recording: id, ...tell(facts) };
  await keep(`${id}.lesson.json`, lesson);
  await keep(`${id}.golden.json`, goldenOf(facts));
  list.push({ id, title: lesson.title, about: lesson.about, takes: facts.session.takes.length });
  console.log(`${id}: ${events.length} events, ${JSON.stringify(goldenOf(facts).truthError)}`);
  console.log(`   ${lesson.seen}`);
}
await keep('lessons.json', list);

async function keep(name: string, document: unknown): Promise<void> {
  await writeFile(`${folder}/${name}`, `${JSON.stringify(document, null, 2)}\n`);
}
