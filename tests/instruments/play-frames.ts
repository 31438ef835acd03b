import { encode } from '../../protocols/encode.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { random } from '../tools/random.ts';
import { randomReadings } from './random-readings.ts';

/**
 * A process of its own that plays an instrument: `play-frames PORT`. For each line "PROFILE SEED COUNT" on its input
 * it sends so many frames with made-up readings, in pieces of every size.
 */
const { SerialPort } = await import('serialport');
const port = new SerialPort({ path: process.argv[2]!, baudRate: 115_200, hupcl: false });
await new Promise<void>((resolve) => port.once('open', () => resolve()));
console.log('open');

async function send(bytes: string): Promise<void> {
  await new Promise<void>((resolve, reject) =>
    port.write(Buffer.from(bytes, 'latin1'), (error) => (error ? reject(error) : resolve())),
  );
}

async function play(id: string, seed: number, count: number): Promise<void> {
  const profile = findProfile(id);
  const numbers = random(seed);
  // The first frame after opening is trusted only when it proves itself whole.
  const untrusted = profile.frame.ends === 'delimiter' && !profile.sum;
  let bytes = untrusted ? encode(profile, []) : '';
  for (let k = 0; k < count; k += 1) bytes += encode(profile, randomReadings(profile, numbers));
  const sizes = random(seed + 1);
  for (let at = 0; at < bytes.length; ) {
    const size = 1 + sizes.below(4000);
    await send(bytes.slice(at, at + size));
    at += size;
  }
}

let playing = Promise.resolve();
process.stdin.setEncoding('utf8');
let typed = '';
process.stdin.on('data', (text: string) => {
  typed += text;
  const lines = typed.split('\n');
  typed = lines.pop()!;
  for (const line of lines) {
    const [id = '', seed, count] = line.split(' ');
    playing = playing.then(() => play(id, Number(seed), Number(count)));
  }
});
process.stdin.on('end', () => process.exit());
