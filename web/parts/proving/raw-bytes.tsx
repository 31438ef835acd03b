import { say } from '../../words/say.ts';

/** Bytes a row. */
const wide = 16;
const mostRows = 6;

/** The newest bytes as they came, as hex and as text. */
export function RawBytes({ hex }: { hex: string }) {
  const bytes = (hex.match(/../g) ?? []).map((two) => Number.parseInt(two, 16));
  const whole = Math.ceil(bytes.length / wide);
  const rows = Array.from({ length: whole }, (_, k) => bytes.slice(wide * k, wide * (k + 1)));
  const shown = rows.slice(-mostRows);
  return (
    <table class="raw" data-testid="raw" aria-label={say('Bytes as they come')}>
      <tbody>
        {Array.from({ length: mostRows }, (_, k) => (
          <tr key={k}>
            <td>{(shown[k] ?? []).map((byte) => byte.toString(16).padStart(2, '0')).join(' ')}</td>
            <td>{(shown[k] ?? []).map(textOf).join('')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function textOf(byte: number): string {
  return byte >= 32 && byte < 127 ? String.fromCharCode(byte) : '·';
}
