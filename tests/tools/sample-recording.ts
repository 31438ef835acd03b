import { RecordingWriter } from '../../daemon/recording/writer.ts';
import type { Header, NewEvent, Stamp } from '../../shared/session/events.ts';
import { setupSchema } from '../../shared/session/setup.ts';

/** Constructed recordings for tests of what becomes of the file. */

export const sampleHeader: Header = {
  recording: 1,
  id: 'sample',
  program: 'test',
  t: 1_700_000_000_000,
  setup: setupSchema.parse({
    kind: 'way',
    part: 'Sample',
    surface: 'front way',
    lengthMm: 1200,
    baseMm: 200,
    back: 'no',
    stations: 7,
    instrument: {
      name: 'level',
      source: 'cable',
      port: '/dev/ttyUSB0',
      profile: 'line-decimal',
      unit: 'um/m',
    },
  }),
};

export function stampOf(k: number): Stamp {
  return { t: sampleHeader.t + k, m: 0.25 * k };
}

export function reading(value: number): NewEvent {
  // The degree sign is byte 0xB0 of the frame, kept as one character.
  return { type: 'reading', from: 'level', raw: `${value.toFixed(1)}\xb0`, value };
}

/** A take of step k, 0 at the start end, that averages the readings numbered `first` to `last`. */
export function take(k: number, value: number, first: number, last: number): NewEvent {
  return {
    type: 'take',
    place: { run: 'front way out', at: [`F${k}`, `F${k + 1}`] },
    from: 'level',
    value,
    spread: 0.5,
    readings: [first, last],
    count: last - first + 1,
    by: 'hands-free',
    steadiness: 'steady',
  };
}

const stream = { durable: false };
const kept = { durable: true };

/** Writes a whole walk of six steps, closed by its end: 6 × (4 readings and a take), a note, the end. */
export async function writeSample(path: string): Promise<void> {
  const writer = await RecordingWriter.create(path, sampleHeader);
  for (let k = 0; k < 6; k += 1) {
    const values = [1, 2, 4, 9].map((step) => 10 * k + step);
    const first = writer.seq + 1;
    await Promise.all(values.map((value) => writer.append(reading(value), stampOf(k), stream)));
    await writer.append(take(k, 10 * k + 4, first, first + 3), stampOf(k), kept);
  }
  await writer.append({ type: 'note', text: 'Öl auf F3 · 20 °C' }, stampOf(7), kept);
  await writer.append({ type: 'end' }, stampOf(8), kept);
  await writer.close();
}
