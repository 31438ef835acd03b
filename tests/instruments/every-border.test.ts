import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Instrument } from '../../daemon/instruments/instrument.ts';
import { realPort } from '../../daemon/ports/real.ts';
import { type ChannelReading, decode } from '../../protocols/decode.ts';
import { encodeFrame } from '../../protocols/encode.ts';
import type { Profile } from '../../protocols/profile.ts';
import { shippedProfiles } from '../../protocols/shipped.ts';
import { PtyPair } from '../tools/pty-pair.ts';
import { random } from '../tools/random.ts';
import { randomReadings } from './random-readings.ts';
import { rechunked } from './rechunked.ts';

const frames = 10_000;
const seed = 41;

/** What a profile is to be told, in the words of the decoder: a float keeps 24 bits of what was meant. */
function told(profile: Profile): readonly ChannelReading[][] {
  const numbers = random(seed);
  return Array.from({ length: frames }, () => {
    const decoding = decode(profile, encodeFrame(profile, randomReadings(profile, numbers)));
    if ('why' in decoding) throw new Error(decoding.why);
    return [...decoding.ok];
  });
}

let folder = '';
let pair: PtyPair;
let player: ChildProcess;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'wayscribe-test-'));
  pair = new PtyPair(folder);
  await pair.plugIn();
  player = spawn(process.execPath, ['--import', 'tsx', 'tests/instruments/play-frames.ts', pair.a], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  await once(player.stdout!, 'data');
});
afterAll(async () => {
  player.stdin!.end();
  await pair.pullOut();
  rmSync(folder, { recursive: true });
});

test.each(shippedProfiles.map((profile) => [profile.id, profile] as const))(
  '%s: 10,000 frames through a pseudo-terminal, broken apart at every border, none lost and none wrong',
  async (id, profile) => {
    const longest = profile.frame.ends === 'length' ? profile.frame.length : profile.frame.longest;
    // Nothing is asked here: an answer takes the same way whether or not it was asked for.
    const silent: Profile = { ...profile, line: { ...profile.line, bootMs: 0 }, talk: { kind: 'by-button' } };
    const instrument = new Instrument(id, silent, rechunked(realPort(pair.b), longest + 3));
    const heard: ChannelReading[] = [];
    const discarded: string[] = [];
    const done = new Promise<void>((resolve) => {
      instrument.readings$.subscribe(({ decoded }) => {
        heard.push(decoded);
        if (heard.length === frames * profile.channels.length) resolve();
      });
    });
    instrument.discarded$.subscribe(({ raw, why }) => discarded.push(`${JSON.stringify(raw)} ${why}`));
    await instrument.start();
    player.stdin!.write(`${id} ${seed} ${frames}\n`);
    await done;
    await instrument.stop();
    const first =
      profile.sum || profile.frame.ends === 'length' ? [] : [expect.stringContaining('before the first')];
    expect(discarded).toEqual(first);
    expect(heard).toEqual(told(profile).flat());
  },
);
