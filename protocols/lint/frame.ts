import { bytesOf } from '../bytes.ts';
import type { Profile } from '../profile.ts';
import { sealLength } from '../seal.ts';
import { sumWidth } from '../sums.ts';
import { error, type Finding, note } from './finding.ts';

/** Whether frames can be found in the bytes, and proved whole. */
export function frameFindings(profile: Profile): Finding[] {
  const { frame, sum, says } = profile;
  const found: Finding[] = [...endFindings(profile), ...sevenBitFindings(profile)];
  const size = 'size' in says ? says.size + sealLength(sum) : undefined;
  if (frame.ends === 'length' && size !== undefined && size !== frame.length) {
    found.push(error('frame.length', `is ${frame.length}, but parts and checksum take ${size} bytes`));
  }
  if (frame.ends !== 'length' && size !== undefined && size > frame.longest) {
    found.push(error('frame.longest', `is ${frame.longest}, but parts and checksum take ${size} bytes`));
  }
  if (!sum) found.push(note('sum', 'without a checksum a changed digit can make another whole frame'));
  else if (sumWidth[sum.kind] === 1) {
    found.push(note('sum', 'a checksum of eight bits passes one damaged frame in 256 or fewer'));
  }
  return found;
}

function endFindings({ frame, sum, says }: Profile): Finding[] {
  switch (frame.ends) {
    case 'delimiter': {
      const found: Finding[] = [];
      const delimiter = bytesOf(frame.delimiter);
      if (says.as === 'bytes')
        found.push(error('frame', 'raw bytes can look like the delimiter: end it by length'));
      if (sum?.as === 'bytes') {
        found.push(
          error('sum.as', 'a raw checksum byte can look like the delimiter: end the frame by length'),
        );
      }
      if (says.as === 'text') {
        says.parts.forEach((part, k) => {
          const text = part.part === 'fixed' ? bytesOf(part.text) : part.part === 'skip' ? part.of : '';
          if (!text.includes(delimiter)) return;
          found.push(error(`says.parts.${k}`, 'holds the delimiter, which can stand in no frame'));
        });
      }
      return found;
    }
    case 'length': {
      const start = frame.start === undefined ? '' : bytesOf(frame.start);
      if (start.length > frame.length) return [error('frame.start', 'is longer than the frame')];
      if (start || sum) return [];
      return [error('frame', 'without a start or a checksum nobody knows where a frame begins')];
    }
    case 'silence': {
      if (sum || 'size' in says) return [];
      return [
        error(
          'frame',
          'a pause in mid-frame would leave half a frame: it needs a checksum, or parts by place',
        ),
      ];
    }
  }
}

/** What seven data bits can't carry. */
function sevenBitFindings({ line, frame, talk, sum, says }: Profile): Finding[] {
  if (line.dataBits === 8) return [];
  const bytes: [string, string | undefined][] = [
    ['frame.delimiter', 'delimiter' in frame ? frame.delimiter : undefined],
    ['frame.start', 'start' in frame ? frame.start : undefined],
    ['talk.request', 'request' in talk ? talk.request : undefined],
  ];
  const found = bytes
    .filter(([, notation]) => notation !== undefined && /[\u0080-\u00ff]/.test(bytesOf(notation)))
    .map(([place]) => error(place, 'holds a byte that seven data bits can’t carry'));
  if (says.as === 'bytes') found.push(error('line.dataBits', 'raw bytes need eight data bits'));
  if (sum?.as === 'bytes') found.push(error('line.dataBits', 'a raw checksum needs eight data bits'));
  return found;
}
