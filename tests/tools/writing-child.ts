import { existsSync, writeSync } from 'node:fs';
import { reopenRecording } from '../../daemon/recording/reopen.ts';
import { RecordingWriter } from '../../daemon/recording/writer.ts';
import { reading, sampleHeader, stampOf } from './sample-recording.ts';

/**
 * Streams readings into the recording named on the command line, and a note among them as often as it can,
 * until it is killed. Says each note aloud once it is recorded, as the page would show it.
 */
const [path = ''] = process.argv.slice(2);

async function start(): Promise<RecordingWriter> {
  if (!existsSync(path)) return RecordingWriter.create(path, sampleHeader);
  const { writer, torn } = await reopenRecording(path);
  await writer.append({ type: 'resumed', why: 'killed', ...(torn && { torn }) }, stampOf(0), {
    durable: true,
  });
  return writer;
}

const writer = await start();
for (;;) {
  for (let k = 0; k < 20; k += 1) void writer.append(reading(k), stampOf(k), { durable: false });
  const text = `note after ${writer.seq}`;
  const { seq } = await writer.append({ type: 'note', text }, stampOf(1), { durable: true });
  // Straight to the pipe: what stands in a buffer of this process dies with it.
  writeSync(1, `${seq} ${text}\n`);
}
