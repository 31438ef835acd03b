/**
 * What helps when bytes come and no frame fits: what the bytes themselves tell of speed, parity and line ends.
 * @param bytes what came, one character a byte
 */
export function hintFor(bytes: string): string {
  if (bytes === '') {
    return 'Nothing comes. Is it switched on? Some speak only when their button is pressed, or when they are asked.';
  }
  if (share(bytes, isText) > 0.95) return textHint(bytes);
  const seven = sevenBits(bytes);
  if (seven) return `The bytes are text when their highest bit is left out: set 7 data bits and ${seven}.`;
  if (changesPerByte(bytes) < 2) {
    return 'The bytes look stretched: the line is set faster than the instrument speaks. Try half the speed, or a quarter.';
  }
  return 'The bytes are no text: it speaks in binary frames, or the line is set slower than it speaks. Try a higher speed.';
}

function textHint(bytes: string): string {
  const end = ['\r\n', '\n\r', '\r', '\n'].find((candidate) => bytes.includes(candidate));
  if (end === undefined)
    return 'Text comes, without line ends: its frames have one length, or a pause ends them.';
  // The first line may have lost its head.
  const [, line = ''] = bytes.split(end);
  const name = [...end].map((character) => (character === '\r' ? 'CR' : 'LF')).join(' ');
  return `Lines that end with ${name} come, and no profile knows what stands in them: ${JSON.stringify(line.slice(0, 60))}.`;
}

/** The parity that explains the highest bits of text sent with seven; undefined when there is none. */
function sevenBits(bytes: string): string | undefined {
  if (share(bytes, (code) => isText(code & 0x7f)) < 0.95) return undefined;
  const odd = share(bytes, (code) => ones(code) % 2 === 1);
  if (odd < 0.05) return 'even parity';
  if (odd > 0.95) return 'odd parity';
  return share(bytes, (code) => code >= 0x80) > 0.95 ? 'no parity, two stop bits' : undefined;
}

function isText(code: number): boolean {
  return (code >= 0x20 && code < 0x7f) || code === 0x0d || code === 0x0a || code === 0x09;
}

/** Mean number of changes from bit to bit, the start bit before and the stop bit behind counted in. */
function changesPerByte(bytes: string): number {
  let changes = 0;
  for (let k = 0; k < bytes.length; k += 1) {
    const bits = (bytes.charCodeAt(k) << 1) | 0x200;
    // The one change from start to stop bit that no byte can do without is left out.
    changes += ones((bits ^ (bits >> 1)) & 0x1ff) - 1;
  }
  return changes / bytes.length;
}

function ones(number: number): number {
  let count = 0;
  for (let rest = number; rest > 0; rest >>= 1) count += rest & 1;
  return count;
}

function share(bytes: string, holds: (code: number) => boolean): number {
  let count = 0;
  for (let k = 0; k < bytes.length; k += 1) if (holds(bytes.charCodeAt(k))) count += 1;
  return count / bytes.length;
}
