import { createInterface } from 'node:readline';
import { PortLink } from '../../daemon/ports/link.ts';
import { stampNow } from '../../daemon/ports/port.ts';
import { realPort } from '../../daemon/ports/real.ts';
import { Pendulum } from '../../daemon/simulate/pendulum.ts';
import { seededRandom } from '../../daemon/simulate/random.ts';
import { findProfile } from '../../protocols/shipped.ts';
import type { LevelOrder } from './level-player.ts';

/**
 * A process of its own that plays a level on a serial port: `play-level PORT SEED EVERY_MS`. Orders come in as JSON lines;
 * every frame that was written goes out as a line. It opens its port again whenever that comes back.
 */
const [, , path, seed, everyMs] = process.argv;
const level = new Pendulum(
  { zero: 38, noise: 0.3, driftPerHour: 0, settleMs: 110, swing: 120 },
  seededRandom(Number(seed)),
);
const link = new PortLink(realPort(path!), findProfile('line-decimal').line, {
  opened: () => {},
  data: () => {},
  closed: () => {},
  state: (state) => console.log(JSON.stringify({ link: state })),
});
await link.start();

setInterval(() => {
  const value = level.read(stampNow().m);
  const frame = `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(1).padStart(6, '0')}`;
  link.write(`${frame}\r\n`);
  console.log(JSON.stringify({ frame }));
}, Number(everyMs));

createInterface({ input: process.stdin })
  .on('line', (line) => {
    const order = JSON.parse(line) as LevelOrder;
    if (order.do === 'lift') level.lift();
    if (order.do === 'stand') level.setDown(order.rest, stampNow().m);
    if (order.do === 'write') link.write(order.bytes);
  })
  .on('close', () => process.exit());
