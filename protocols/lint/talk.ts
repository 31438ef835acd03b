import { leastSpan } from '../../shared/live/steadiness.ts';
import { bytesOf } from '../bytes.ts';
import type { Profile } from '../profile.ts';
import { error, type Finding } from './finding.ts';

/** Whether times and speed go together. */
export function talkFindings({ line, talk, frame, steady, examples }: Profile): Finding[] {
  if (talk.kind === 'by-button') return [];
  const found: Finding[] = [];
  if (talk.silentAfterMs <= talk.everyMs) {
    found.push(error('talk.silentAfterMs', 'is not longer than the time between two frames'));
  }
  const longest = Math.max(
    0,
    ...examples.filter(({ reads }) => reads).map((example) => bytesOf(example.frame).length),
  );
  const ends = frame.ends === 'delimiter' ? bytesOf(frame.delimiter).length : 0;
  const asks = talk.kind === 'on-request' ? bytesOf(talk.request).length : 0;
  const bits = 1 + line.dataBits + (line.parity === 'none' ? 0 : 1) + line.stopBits;
  const onLineMs = (1000 * bits * (longest + ends + asks)) / line.baudRate;
  if (onLineMs > talk.everyMs) {
    found.push(
      error(
        'talk.everyMs',
        `is shorter than the ${onLineMs.toFixed(0)} ms that a frame takes at ${line.baudRate} baud`,
      ),
    );
  }
  if (steady.fewest > steady.windowMs / talk.everyMs + 1) {
    found.push(error('steady.fewest', `so many readings never come in ${steady.windowMs} ms`));
  }
  // Readings that come on time span a whole number of periods, never more than the window.
  const spanMs = Math.floor(steady.windowMs / talk.everyMs) * talk.everyMs;
  if (spanMs < leastSpan * steady.windowMs) {
    found.push(
      error(
        'steady.windowMs',
        `readings every ${talk.everyMs} ms never span ${leastSpan} of it: it is never steady`,
      ),
    );
  }
  return found;
}
