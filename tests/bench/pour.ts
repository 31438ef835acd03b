import { closeSync, constants, openSync, writeSync } from 'node:fs';

/** A process of its own that writes `COUNT` readings to a port as fast as it takes them: `pour PORT COUNT LAST`. */
const [, , path = '', count, last = ''] = process.argv;
const port = openSync(path, constants.O_WRONLY | constants.O_NOCTTY);
const line = (k: number) => `+${String(1000 + (k % 50)).padStart(6, '0')}\r\n`;
const piece = 200;
const write = (text: string) => {
  const bytes = Buffer.from(text, 'latin1');
  for (let done = 0; done < bytes.length; ) done += writeSync(port, bytes, done);
};
write('\r\n');
for (let k = 0; k < Number(count); k += piece) {
  write(Array.from({ length: piece }, (_, i) => line(k + i)).join(''));
}
write(`${last}\r\n`);
closeSync(port);
