import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { Instrument, type Reading } from '../../daemon/instruments/instrument.ts';
import { loadProfiles } from '../../daemon/instruments/own-profiles.ts';
import { realPort } from '../../daemon/ports/real.ts';
import type { ProfileInput } from '../../protocols/profile.ts';
import { checkProfile } from '../../protocols/read-profile.ts';
import { shippedProfiles } from '../../protocols/shipped.ts';
import { PtyPair } from '../tools/pty-pair.ts';
import { testFolder } from '../tools/test-folder.ts';

/**
 * A made-up instrument, as its made-up manual tells it: "19200 baud, 8 bits, no parity, one stop bit; RTS must be up,
 * and it takes half a second to wake. Send ?V and it answers, for example
 *
 *     #017 V=-0123.5um T=+20.4C ok ~78
 *
 * with CR at the end: a running number of three digits, the level in um (um/m) or as (arcsec), four digits before
 * the point and one behind, OVRNG in place of it out of range, the temperature in celsius, ok or lo for the battery.
 * Behind the ~ stands the exclusive-or of all characters from V on up to the one before the ~, in hex."
 */
const example = 'V=-0123.5um T=+20.4C ok ';
const xor = (text: string) => {
  const sum = [...text].reduce((sum, character) => sum ^ character.charCodeAt(0), 0);
  return sum.toString(16).padStart(2, '0').toUpperCase();
};
const sent = (text: string) => `#017 ${text}~${xor(text)}`;

const profile: ProfileInput = {
  profile: 2,
  id: 'made-up-level',
  title: 'Made-up level that counts its answers',
  source: 'The manual in the comment above; constructed.',
  line: { baudRate: 19200, dataBits: 8, parity: 'none', stopBits: 1, rts: true, bootMs: 500 },
  talk: { kind: 'on-request', request: '?V', everyMs: 50, silentAfterMs: 2000 },
  frame: { ends: 'delimiter', delimiter: '\r', longest: 60 },
  sum: { kind: 'xor', from: 5, mark: '~', as: 'hex' },
  says: {
    as: 'text',
    parts: [
      { part: 'fixed', text: '#' },
      { part: 'skip', of: '0123456789', length: [3, 3] },
      { part: 'fixed', text: ' V=' },
      {
        part: 'number',
        channel: 'level',
        sign: 'always',
        digits: [5, 5],
        decimals: 1,
        instead: { OVRNG: 'over-range' },
      },
      { part: 'unit', channel: 'level', means: { um: 'um/m', as: 'arcsec' } },
      { part: 'fixed', text: ' T=' },
      { part: 'number', channel: 'air', sign: 'always', digits: [3, 3], decimals: 1 },
      { part: 'fixed', text: 'C ' },
      { part: 'state', means: { ok: 'ok', lo: 'low-battery' } },
      { part: 'fixed', text: ' ', optional: true },
    ],
  },
  channels: [
    { name: 'level', quantity: 'slope', unit: 'um/m', steady: { spread: 0.8, trend: 1.2 } },
    { name: 'air', quantity: 'temperature', unit: 'degC', steady: { spread: 0.1, trend: 0.2 } },
  ],
  steady: { windowMs: 1000, fewest: 5, movingFactor: 12 },
  examples: [
    {
      frame: sent(example),
      reads: { level: { value: -123.5, unit: 'um/m', decimals: 1 }, air: { value: 20.4, decimals: 1 } },
    },
    {
      frame: sent('V=OVRNGum T=+20.4C lo '),
      reads: {
        level: { value: null, unit: 'um/m', state: 'over-range' },
        air: { value: 20.4, state: 'low-battery', decimals: 1 },
      },
    },
    { frame: `#017 ${example}~00`, why: 'a wrong checksum' },
    { frame: sent('V=-123.5um T=+20.4C ok '), why: 'a digit too few' },
  ],
};

const wayscribe = (...args: string[]) =>
  promisify(execFile)(process.execPath, ['--import', 'tsx', 'daemon/main.ts', ...args]);

/** A folder of profiles with the made-up one in it. */
function ownFolder(name = 'made-up-level.json', text = JSON.stringify(profile)): string {
  const folder = join(testFolder(), 'profiles');
  mkdirSync(folder);
  writeFileSync(join(folder, name), text);
  return folder;
}

test('the profile of a made-up instrument passes the check, is listed, and works on a port', async () => {
  const folder = ownFolder();
  const checked = await wayscribe('profiles', 'check', join(folder, 'made-up-level.json'));
  expect(checked.stdout).toContain('made-up-level is sound: 4 examples');
  expect(checked.stdout).not.toContain('Wrong');
  const listed = await wayscribe('profiles', 'list', '--profiles', folder);
  expect(listed.stdout).toContain('made-up-level        Made-up level that counts its answers');

  const pair = new PtyPair(testFolder());
  await pair.plugIn();
  const command = ['daemon/main.ts', 'simulate', 'made-up-level', '--to', pair.a, '--profiles', folder];
  const player = spawn(process.execPath, ['--import', 'tsx', ...command], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await once(player.stdout, 'data');
  const { book } = await loadProfiles(folder);
  const instrument = new Instrument('level', book.find('made-up-level'), realPort(pair.b));
  const readings: Reading[] = [];
  const enough = new Promise<void>((resolve) => {
    instrument.readings$.subscribe((reading) => {
      readings.push(reading);
      if (readings.length === 20) resolve();
    });
  });
  await instrument.start();
  await enough;
  await instrument.stop();
  expect(readings.map(({ decoded }) => decoded.channel)).toEqual(
    Array.from({ length: 20 }, (_, k) => (k % 2 ? 'air' : 'level')),
  );
  expect(readings.every(({ decoded }) => decoded.value !== null && decoded.state === 'ok')).toBe(true);

  const ended = once(player, 'exit');
  player.kill('SIGINT');
  expect(await ended).toEqual([0, null]);
  await pair.pullOut();
});

test('the profile in the documentation is sound', () => {
  const [, json = ''] = /```json\n([\s\S]*?)```/.exec(readFileSync('protocols/README.md', 'utf8')) ?? [];
  const { findings } = checkProfile(JSON.parse(json));
  expect(findings.filter(({ kind }) => kind === 'error')).toEqual([]);
});

test('a profile that is wrong is named with its place, and stops nothing', async () => {
  const wrong = { ...profile, channels: [{ ...profile.channels[0]!, unit: 'mm' }] };
  const folder = ownFolder('made-up-level.json', JSON.stringify(wrong));
  const failed = await wayscribe('profiles', 'check', join(folder, 'made-up-level.json')).catch(
    (error) => error,
  );
  expect(failed.code).toBe(1);
  expect(failed.stdout).toContain('Wrong: channels.0.unit: mm is no unit of slope');
  const { book, problems } = await loadProfiles(folder);
  expect(book.all).toEqual(shippedProfiles);
  expect(problems.map(({ message }) => message)).toEqual([
    expect.stringMatching(/made-up-level\.json: channels\.0\.unit: mm is no unit .*and \d more/),
  ]);
});

test.each([
  ['other-name.json', JSON.stringify(profile), 'its id is "made-up-level"; call it made-up-level.json'],
  [
    'line-decimal.json',
    JSON.stringify({ ...profile, id: 'line-decimal' }),
    'there is a profile "line-decimal" already',
  ],
  ['broken.json', '{ "profile": 2,', 'is no JSON'],
  ['empty.json', '[]', 'expected object'],
])('a file %s that can not be one is left out', async (name, text, why) => {
  const { problems } = await loadProfiles(ownFolder(name, text));
  expect(problems).toHaveLength(1);
  expect(problems[0]!.message).toContain(why);
});
