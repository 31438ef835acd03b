import { describe, expect, test } from 'vitest';
import { lint } from './lint.ts';
import { type Profile, profileSchema } from './profile.ts';
import { checkProfile, readProfile } from './read-profile.ts';
import { findProfile, shippedProfiles } from './shipped.ts';

const errorsOf = (profile: Profile) =>
  lint(profile)
    .filter(({ kind }) => kind === 'error')
    .map(({ place, message }) => `${place}: ${message}`);

/** A shipped profile with changes at paths, as "frame.length". */
function changed(id: string, changes: Record<string, unknown>): Profile {
  const copy = structuredClone(findProfile(id)) as unknown as Record<string, unknown>;
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.split('.');
    let inner = copy;
    for (const key of keys.slice(0, -1)) inner = inner[key] as Record<string, unknown>;
    if (value === undefined) delete inner[keys.at(-1)!];
    else inner[keys.at(-1)!] = value;
  }
  return profileSchema.parse(copy);
}

test.each(shippedProfiles.map((profile) => [profile.id, profile] as const))(
  '%s does not contradict itself',
  (_id, profile) => {
    expect(errorsOf(profile)).toEqual([]);
  },
);

test('no two shipped profiles have one name', () => {
  expect(new Set(shippedProfiles.map(({ id }) => id)).size).toBe(shippedProfiles.length);
});

const silence = { ends: 'silence', gapMs: 20, longest: 32 };

describe('a contradiction is named at its place', () => {
  test.each<[string, Record<string, unknown>, string]>([
    ['labelled-channels', { 'channels.1.name': 'x' }, 'channels.1.name: "x" is there twice'],
    [
      'line-decimal',
      { 'talk.everyMs': 350, 'steady.fewest': 3 },
      'steady.windowMs: readings every 350 ms never span 0.9 of it',
    ],
    ['line-decimal', { 'channels.0.unit': 'mm' }, 'channels.0.unit: mm is no unit of slope'],
    ['ask-decimal', { 'says.parts.4.means': { mm: 'mm' } }, 'says.parts.4.means: mm is no unit of slope'],
    ['line-decimal', { 'says.parts.0.channel': 'roll' }, 'says.parts.0.channel: there is no channel "roll"'],
    ['line-decimal', { 'says.parts.0.channel': 'roll' }, 'channels.0: 0 parts tell the number'],
    ['ask-decimal', { 'channels.0.unitKnown': false }, 'says.parts.4: always names the unit'],
    ['scpi-volts', { 'channels.0.range': [5, -5] }, 'channels.0.range: the lowest value comes first'],
    ['modbus-int16', { 'channels.0.resolution': 100 }, 'channels.0.resolution: is coarser'],
    ['modbus-int16', { 'channels.0.resolution': 0.0001 }, 'channels.0.resolution: is finer than 0.001'],
    ['modbus-int16', { 'channels.0.range': [-90, 90] }, 'channels.0.range: reaches further than 32.768'],
    ['sum-frame', { 'frame.start': undefined, sum: undefined }, 'frame: without a start or a checksum'],
    ['modbus-float', { 'frame.length': 10 }, 'frame.length: is 10, but parts and checksum take 9 bytes'],
    ['bcd-nibbles-hex', { 'frame.longest': 12 }, 'frame.longest: is 12, but parts'],
    [
      'sum-frame',
      { frame: { ends: 'delimiter', delimiter: '\r', longest: 20 } },
      'sum.as: a raw checksum byte',
    ],
    [
      'modbus-float',
      { frame: { ends: 'delimiter', delimiter: '\r', longest: 20 } },
      'frame: raw bytes can look',
    ],
    ['columns-tab', { 'frame.delimiter': '\t' }, 'says.parts.1: holds the delimiter'],
    ['line-decimal', { frame: silence }, 'frame: a pause in mid-frame would leave half a frame'],
    ['modbus-float', { 'line.dataBits': 7 }, 'line.dataBits: raw bytes need eight data bits'],
    ['bcd-nibbles', { 'line.dataBits': 7 }, 'frame.start: holds a byte that seven'],
    ['line-decimal', { 'talk.silentAfterMs': 50 }, 'talk.silentAfterMs: is not longer'],
    ['nmea-xdr', { 'line.baudRate': 300 }, 'talk.everyMs: is shorter than the'],
    ['line-decimal', { 'steady.fewest': 40 }, 'steady.fewest: so many readings never come'],
    ['line-decimal', { 'says.parts.0.digits': [9, 3] }, 'says.parts.0.digits: the fewest come first'],
    [
      'labelled-channels',
      { 'says.parts.3': { part: 'fixed', text: '2' } },
      'says.parts.1: what follows can look like more of the number',
    ],
    [
      'line-decimal',
      { 'says.parts.0': { part: 'skip', of: '+-0', length: [1, 2] } },
      'channels.0: 0 parts tell the number',
    ],
    ['line-decimal', { 'says.states': { '+0000.0': 'error' } }, 'says.states.+0000.0: is also a frame'],
    ['modbus-float', { 'says.parts.1.at': { bytes: [2, 3, 4, 5] } }, 'says.parts.1.at: takes a place'],
    ['modbus-float', { 'says.parts.1.at': { bytes: [4, 5, 6, 7] } }, 'says.parts.1.at: lies outside the 7'],
    [
      'modbus-float',
      { 'says.parts.1.at': { bytes: [4, 5, 6] } },
      'says.parts.1.at: a float has 4 or 8 bytes',
    ],
    ['modbus-float', { 'says.parts.1.decimals': 2 }, 'says.parts.1: a float has its point in itself'],
    [
      'modbus-int16',
      { 'says.parts.1.instead': { '7FFF': 'error' } },
      'says.parts.1.instead: "7FFF" is not 4',
    ],
    ['bcd-nibbles', { 'says.parts.2.is': 'int' }, 'says.parts.2: the sign of a number that is "int"'],
    ['bcd-nibbles', { 'says.parts.2.decimals': 3 }, 'says.parts.2.decimals: are also told by a part'],
    [
      'line-decimal',
      { 'examples.0.reads.tilt.value': 12.5 },
      'examples.0.reads.tilt: it says tilt {"value":12.4',
    ],
    ['line-decimal', { 'examples.0.reads': undefined }, 'examples.0: is a whole frame'],
    ['line-decimal', { 'examples.0.frame': '0012.4' }, 'examples.0: is no frame: has no sign before tilt'],
    ['modbus-int16', { 'examples.0.reads.y': undefined }, 'examples.0.reads: tells nothing of "y"'],
  ])('%s with %j', (id, changes, expected) => {
    expect(errorsOf(changed(id, changes)).some((text) => text.startsWith(expected))).toBe(true);
  });
});

test('a key that is not known, a missing one and a wrong value are errors of form', () => {
  const { title: _, ...untitled } = findProfile('line-decimal');
  expect(
    checkProfile({ ...untitled, speed: 9600 })
      .findings.map(({ place }) => place)
      .sort(),
  ).toEqual(['profile', 'title']);
  expect(() => readProfile({ ...untitled }, 'mine.json')).toThrow(/^mine\.json: title: /);
  expect(checkProfile(null).profile).toBeNull();
});
