import { readdir, readFile } from 'node:fs/promises';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { Folded } from '../shared/replay/folded.ts';
import { marksOf } from '../shared/replay/marks.ts';
import { needleAt, steadyLimits } from '../shared/replay/needle.ts';
import { readRecorded, recordedOf } from '../shared/replay/recorded.ts';
import { isKept } from '../shared/session/events.ts';
import { fold, type Session } from '../shared/session/fold.ts';
import { resultOf } from '../shared/session/result.ts';
import { receive } from '../web/state/incoming.ts';
import { initialState } from '../web/state/page-state.ts';
import { playbackOf } from '../web/state/replay.ts';
import { openReplay, replaying } from '../web/state/replaying.ts';
import { ReplayedLevel } from './tools/replayed-level.ts';

const found = await readdir('recordings', { recursive: true });
const files = found.filter((name) => name.endsWith('.jsonl')).map((name) => `recordings/${name}`);

describe.each(files)('%s', (path) => {
  const load = async () => {
    const recorded = readRecorded(await readFile(path, 'utf8'), path);
    return { recorded, folded: new Folded(recorded), ...(await readRecording(path)) };
  };

  test('comes to the same result as live', async () => {
    const { recorded, folded, header, events } = await load();
    const replayed = folded.at(recorded.seq.length - 1);
    expect(replayed.takes.length).toBeGreaterThan(0);
    expect(resultOf(replayed)).toEqual(resultOf(fold(header, events)));
  });

  test('is at any moment what the page had then, in whatever order the moments are asked for', async () => {
    const { recorded, header, events } = await load();
    expect(recorded.seq.length).toBe(events.length);
    const seed = Math.floor(Math.random() * 2 ** 31);
    console.log(`${path}: seed ${seed}`);
    const moments = fc.sample(fc.integer({ min: 0, max: events.length - 1 }), { numRuns: 20, seed });

    // The page that was open then: greeted before the first event, told every event that a page is told, one by one.
    const session = { header, events: [], seq: 0 };
    let live = receive(
      initialState,
      { type: 'hello', program: '', mode: 'serve', session, instruments: [], simulated: null },
      0,
    );
    const had = new Map<number, Session | null>();
    for (const [place, event] of events.entries()) {
      if (isKept(event)) live = receive(live, { type: 'events', id: header.id, events: [event] }, event.m);
      if (moments.includes(place)) had.set(place, live.session);
    }

    const opened = openReplay(initialState, playbackOf(await readFile(path, 'utf8'), path), null);
    for (const place of moments) {
      const shown = replaying(opened, (replay) => ({ ...replay, place }));
      expect(shown.session).toEqual(had.get(place));
    }
  });

  test('its needle showed the same', async () => {
    const { recorded, header, events } = await load();
    const limits = steadyLimits(header)!;
    const [level] = await ReplayedLevel.allOf(header);
    const said: { mean: number | null; steadiness: string }[] = [];
    level!.needle.live$.subscribe(({ mean, steadiness }) => said.push({ mean, steadiness }));
    const places: number[] = [];
    for (const [place, event] of events.entries()) {
      if (event.type !== 'reading') continue;
      level!.say(event);
      places.push(place);
      await new Promise((resolve) => setImmediate(resolve));
    }
    await level!.stop();
    expect(said.length).toBe(places.length);
    for (let k = 7; k < places.length; k += 61) {
      const { live } = needleAt(recorded, limits, places[k]!);
      expect(live!.steadiness).toBe(said[k]!.steadiness);
      expect(live!.mean).toBeCloseTo(said[k]!.mean!, 9);
    }
  });

  test('its time line shows every take, and those that were rejected', async () => {
    const { recorded, header, events } = await load();
    const marks = marksOf(recorded, steadyLimits(header));
    const { takes } = fold(header, events);
    const shown = marks.filter((mark) => mark.is === 'take');
    expect(shown.map(({ seq }) => seq)).toEqual(takes.map(({ event }) => event.seq));
    expect(shown.filter(({ out }) => out !== undefined).length).toBe(
      takes.filter(({ out }) => out !== undefined).length,
    );
    const walks = marks.filter((mark) => mark.is === 'walk');
    for (const { atMs } of shown) expect(walks.some((w) => w.fromMs <= atMs && atMs <= w.toMs)).toBe(true);
    expect(recordedOf(header, events)).toEqual(recorded);
  });
});

describe('a file that is no recording is refused with its line', () => {
  test.each([
    ['', 'x line 1: the file is empty'],
    ['hello', 'x line 1: is not the header of a recording'],
    ['{"lesson":1}\n', 'x line 1: is not the header of a recording'],
  ])('%s', (text, words) => {
    expect(() => readRecorded(text, 'x')).toThrow(words);
  });

  test('a line in the middle', async () => {
    const lines = (await readFile(files[0]!, 'utf8')).split('\n');
    const spoilt = (k: number, line: string) => () => readRecorded(lines.with(k, line).join('\n'), 'x');
    expect(spoilt(5, '{"seq":5')).toThrow('x line 6: is not JSON');
    expect(spoilt(5, '{"seq":5,"type":"reading"}')).toThrow('x line 6: is no reading');
    expect(spoilt(5, lines[3]!)).toThrow('x line 6: stands out of order');
    expect(spoilt(lines.length - 2, '{"seq":1,"type":"take"}')).toThrow('is no event');
    // Torn, or of a later version: passed over.
    expect(spoilt(lines.length - 1, '{"seq":99999,"ty')).not.toThrow();
    expect(spoilt(5, '{"seq":5,"t":0,"m":0,"type":"of later"}')).not.toThrow();
  });
});
