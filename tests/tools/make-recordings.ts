import { rm, writeFile } from 'node:fs/promises';
import { RecordingWriter } from '../../daemon/recording/writer.ts';
import { demoScene, demoSetup } from '../../daemon/simulate/scenario.ts';
import { fold } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { Conductor } from './conduct.ts';

/**
 * Makes the recordings in recordings/ anew, with their golden results: `npm run recordings`. Everything in them is
 * invented. Look at the difference before it is committed.
 */
const begun = Date.UTC(2026, 2, 2, 8, 0, 0);

async function keep(conductor: Conductor): Promise<void> {
  const { header, events } = conductor;
  const stem = `recordings/${header.id}`;
  await rm(`${stem}.jsonl`, { force: true });
  const writer = await RecordingWriter.create(`${stem}.jsonl`, header);
  for (const { seq: _, t, m, ...event } of events) await writer.append(event, { t, m }, { durable: false });
  await writer.close();
  await writeFile(`${stem}.result.json`, `${JSON.stringify(resultOf(fold(header, events)), null, 2)}\n`);
  console.log(`${stem}: ${events.length} events`);
}

async function scene(
  id: string,
  seed: number,
  changes: Partial<typeof demoSetup>,
  t: number,
): Promise<Conductor> {
  const setup = setupSchema.parse({ ...demoSetup, ...changes });
  return Conductor.of({ id, setup, seed, t, scene: demoScene(setup) });
}

async function outAndBack(): Promise<Conductor> {
  const conductor = await scene('front-way-as-found', 11, { back: 'same', operator: 'first shift' }, begun);
  await conductor.walk();
  await conductor.end();
  return conductor;
}

/** A take spoilt by a bump is voided and repeated, one placement is skipped, a note is left. */
async function withMishaps(): Promise<Conductor> {
  const conductor = await scene(
    'front-way-with-mishaps',
    12,
    { back: 'turned', stations: 9 },
    begun + 3_600_000,
  );
  const [first, second, third, ...rest] = conductor.session.placements;
  await conductor.place(first!);
  await conductor.place(second!);
  await conductor.ask({ do: 'void', take: conductor.session.takes.at(-1)!.event.seq, reason: 'bumped' });
  await conductor.ask({ do: 'note', text: 'leaned on the bed with the elbow', place: second! });
  await conductor.place(second!);
  await conductor.place(third!);
  await conductor.place(rest[0]!);
  await conductor.ask({ do: 'skip', place: rest[1]!, reason: 'a clamp is in the way' });
  await conductor.walk();
  await conductor.end();
  return conductor;
}

await keep(await outAndBack());
await keep(await withMishaps());
