import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FrameCutter } from './frame-cutter.ts';

const frame = { delimiter: '\r\n', longest: 32 };
const stamp = { t: 0, m: 0 };

function cut(chunks: readonly string[], end = false) {
  const frames: string[] = [];
  const discarded: string[] = [];
  const cutter = new FrameCutter(frame, stamp, {
    frame: (text) => frames.push(text),
    discarded: (text, why) => discarded.push(`${text} (${why})`),
  });
  for (const chunk of chunks) cutter.push(Buffer.from(chunk, 'latin1'), stamp);
  if (end) cutter.end(stamp);
  return { frames, discarded };
}

describe('cutting bytes into frames', () => {
  test('gives the same frames wherever the bytes are broken apart', () => {
    const text = `tail\r\n${Array.from({ length: 20 }, (_, k) => `+00${k}.5\r\n`).join('')}`;
    const whole = cut([text]).frames;
    expect(whole).toHaveLength(20);
    fc.assert(
      fc.property(fc.array(fc.nat(text.length), { maxLength: 12 }), (borders) => {
        const at = [0, ...borders.sort((a, b) => a - b), text.length];
        const chunks = at.slice(1).map((to, k) => text.slice(at[k], to));
        expect(cut(chunks).frames).toEqual(whole);
      }),
      { verbose: 1 },
    );
  });

  test('trusts nothing before the first delimiter, nor what the end of the line cut off', () => {
    expect(cut(['.4\r\n+001.2\r\n+00', '1.2'], true)).toEqual({
      frames: ['+001.2'],
      discarded: ['.4 (before the first delimiter)', '+001.2 (cut off by the end of the line)'],
    });
  });

  test('does not hold an endless line, and trusts its rest no more than its beginning', () => {
    const { frames, discarded } = cut(['\r\n', 'x'.repeat(70), 'yy\r\n+001.2\r\n']);
    expect(frames).toEqual(['+001.2']);
    expect(discarded).toHaveLength(2);
    expect(discarded[0]).toContain('no delimiter in 70 bytes: is the speed right?');
    expect(discarded[1]).toBe('yy (the rest of a frame that was too long)');
  });

  test('keeps every byte as it came', () => {
    const bytes = String.fromCharCode(...Array.from({ length: 30 }, (_, k) => 226 + k));
    expect(cut(['\r\n', `${bytes}\r\n`]).frames).toEqual([bytes]);
  });
});
