import { createInterface } from 'node:readline';
import { stampNow } from '../../daemon/ports/port.ts';
import { realPort } from '../../daemon/ports/real.ts';
import { ordinaryIndicator, Pendulum } from '../../daemon/simulate/pendulum.ts';
import { seededRandom } from '../../daemon/simulate/random.ts';
import { Speaker } from '../../daemon/simulate/speaker.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { fromInternal } from '../../shared/units.ts';
import type { LevelOrder } from './level-player.ts';

/**
 * A process of its own that plays an indicator on a serial port: `play-instrument PORT PROFILE SEED`. Orders come in as
 * JSON lines, as for the level; it rests in µm and speaks in the unit of its profile.
 */
const [, , path, profileId, seed] = process.argv;
const profile = findProfile(profileId!);
const [channel] = profile.channels;
const tip = new Pendulum({ ...ordinaryIndicator, settleMs: 60 }, seededRandom(Number(seed)));
const speaker = new Speaker(profile, realPort(path!), {
  everyMs: 50,
  reads(nowMs) {
    const value = fromInternal('height', tip.read(nowMs), channel!.unit);
    return [{ channel: channel!.name, value: Number(value.toFixed(4)), state: 'ok', decimals: 4 }];
  },
});
await speaker.start();

createInterface({ input: process.stdin })
  .on('line', (line) => {
    const order = JSON.parse(line) as LevelOrder;
    if (order.do === 'lift') tip.lift();
    if (order.do === 'stand') tip.setDown(order.rest, stampNow().m);
    if (order.do === 'carry') tip.carry(order.rest);
  })
  .on('close', () => process.exit());
