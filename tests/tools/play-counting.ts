import { createInterface } from 'node:readline';
import { SerialPort } from 'serialport';

/**
 * A process of its own that plays instruments which count: `play-counting PATH=RATE …`. Each sends so many lines a second
 * on its port, as a signed decimal that rises by 0.1 from line to line, so that a lost line shows. On the line "go MS"
 * it sends for so long; then it says how many each has sent.
 */
const wanted = process.argv.slice(2).map((text) => {
  const [path = '', rate] = text.split('=');
  return { path, rate: Number(rate) };
});
const players = await Promise.all(
  wanted.map(async ({ path, rate }) => {
    const port = new SerialPort({ path, baudRate: 115_200, hupcl: false });
    await new Promise<void>((resolve) => port.once('open', () => resolve()));
    return { port, rate, sent: 0 };
  }),
);
console.log('open');

const frameOf = (k: number) => `+${((k % 100_000) / 10).toFixed(1).padStart(6, '0')}\r\n`;

function play(ms: number): void {
  const began = performance.now();
  // What comes before the first delimiter may be half a line and is not believed.
  for (const { port } of players) port.write('\r\n');
  const ticking = setInterval(() => {
    const now = Math.min(ms, performance.now() - began);
    for (const player of players) {
      const due = Math.floor((now / 1000) * player.rate);
      let bytes = '';
      for (; player.sent < due; player.sent += 1) bytes += frameOf(player.sent);
      if (bytes) player.port.write(bytes);
    }
    if (now < ms) return;
    clearInterval(ticking);
    console.log(`sent ${players.map(({ sent }) => sent).join(' ')}`);
  }, 1);
}

createInterface({ input: process.stdin })
  .on('line', (line) => play(Number(line.split(' ')[1])))
  .on('close', () => process.exit());
