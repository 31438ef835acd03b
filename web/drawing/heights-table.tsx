import type { ReducedStation } from '../state/survey-result.ts';
import { asWritten, number } from '../words/quantity.ts';
import { highAndLow, type Sides } from '../words/sides.ts';
import { heightLabel } from './heights-axis.ts';

interface HeightsTableProps {
  readonly stations: readonly ReducedStation[];
  readonly sides?: Sides;
}

/** The same numbers for who can't see the curve. */
export function HeightsTable({ stations, sides = highAndLow }: HeightsTableProps) {
  const writing = asWritten();
  const oneUm = writing.one();
  return (
    <table class="unseen">
      <caption data-testid="station-count" data-count={stations.length}>
        {`Heights of ${stations.length} stations`}
      </caption>
      <thead>
        <tr>
          <th scope="col">Station</th>
          <th scope="col">{`Height, ${writing.head()}`}</th>
          <th scope="col">{`Sure to, ${writing.head()}`}</th>
        </tr>
      </thead>
      <tbody>
        {stations.map(({ name, heightUm, uUm }) => (
          <tr key={name} data-station={name} data-height-um={heightUm} data-u-um={uUm}>
            <th scope="row">{name}</th>
            <td>{heightLabel(heightUm, 0.1 * oneUm, sides)}</td>
            <td>{number((2 * uUm) / oneUm, 1)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
