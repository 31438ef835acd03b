import type { Closure } from '../../../shared/figures/closures.ts';
import type { Result } from '../../../shared/sheet/result.ts';
import { amountSureTo, stationSentence } from '../../../shared/words.ts';
import { asWritten } from '../../words/quantity.ts';
import { closureWords, worstOf } from './plate-closures.ts';
import { placeInWords } from './plate-names.ts';
import type { PlateSession } from './plate-session.ts';

interface SoFarProps {
  readonly session: PlateSession;
  readonly result: Result | null;
  readonly closures: readonly Closure[];
}

/** What is known of the plate, in words. */
export function SoFar({ session, result, closures }: SoFarProps) {
  const rows = result ? [...heightRows(session, result), ...figureRows(result)] : [];
  return (
    <aside class="so-far" aria-label={session.ended ? 'Result in words' : 'What is known so far'}>
      <h2>{session.ended ? 'The plate' : 'So far'}</h2>
      {rows.length === 0 && <p class="soft">Nothing is known of the shape before the second reading.</p>}
      <dl>
        {rows.map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <h2>Closures</h2>
      <dl class="closures">
        {closureRows(session, closures).map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </aside>
  );
}

interface Row {
  readonly name: string;
  readonly value: string;
}

function heightRows(session: PlateSession, { stations }: Result): Row[] {
  const all = Object.entries(stations);
  if (all.length < 3) return [];
  const uUm = Math.max(...all.map(([, each]) => each.uUm));
  const [highest, lowest] = [1, -1].map((sign) =>
    all.reduce((a, b) => (sign * b[1].heightUm > sign * a[1].heightUm ? b : a)),
  );
  const sentence = ([name, { heightUm }]: (typeof all)[number]) =>
    `${stationSentence(name, heightUm, uUm, asWritten())}, ${placeInWords(session, name)}`;
  return [
    { name: 'Highest', value: sentence(highest!) },
    { name: 'Lowest', value: sentence(lowest!) },
  ];
}

function figureRows({ figures, notes }: Result): Row[] {
  const flatness = (key: string, name: string): Row[] => {
    const figure = figures[key];
    return figure ? [{ name, value: amountSureTo(figure.value, figure.u, 'µm', asWritten()) }] : [];
  };
  const note = (name: string): Row[] => {
    const found = notes.find((each) => each.startsWith(`${name}: `));
    return found ? [{ name, value: found.slice(name.length + 2) }] : [];
  };
  return [
    ...flatness('flatness.leastSquares', 'Flatness, least squares'),
    ...flatness('flatness.minimumZone', 'Flatness, minimum zone'),
    ...note('Grade'),
    ...note('Shape'),
  ];
}

/** Of eight lines the middle, the corners and the middles of the edges; of a grid all crossings together. */
function closureRows({ setup, plan }: PlateSession, closures: readonly Closure[]): Row[] {
  const groups: [string, (station: string) => boolean][] =
    setup.pattern === 'grid'
      ? [['rows and columns', () => true]]
      : [
          ['lines at the middle', (name) => name === 'C'],
          ['edges at the corners', (name) => ['NL', 'NR', 'FL', 'FR'].includes(name)],
          ['centre lines at the edges', (name) => ['NM', 'FM', 'LM', 'RM'].includes(name)],
        ];
  return groups.map(([name, holds]) => {
    const all = plan.stations.filter((station) => holds(station.name));
    const closed = closures.filter(({ station }) => holds(station));
    const worst = worstOf(closed);
    if (!worst) return { name, value: 'open: nothing checks them yet' };
    const some = closed.length < all.length ? `, ${closed.length} of ${all.length} closed` : '';
    return { name, value: `${all.length > 1 ? `${worst.station} ` : ''}${closureWords(worst)}${some}` };
  });
}
