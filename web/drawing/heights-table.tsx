import type { ReducedStation } from '../state/survey-result.ts';
import { highAndLow, type Sides } from '../words/sides.ts';
import { heightLabel } from './heights-axis.ts';

interface HeightsTableProps {
  readonly stations: readonly ReducedStation[];
  readonly sides?: Sides;
}

/** The same numbers for who can't see the curve. */
export function HeightsTable({ stations, sides = highAndLow }: HeightsTableProps) {
  return (
    <table class="unseen">
      <caption data-testid="station-count" data-count={stations.length}>
        {`Heights of ${stations.length} stations`}
      </caption>
      <thead>
        <tr>
          <th scope="col">Station</th>
          <th scope="col">Height, µm</th>
          <th scope="col">Sure to, µm</th>
        </tr>
      </thead>
      <tbody>
        {stations.map(({ name, heightUm, uUm }) => (
          <tr key={name} data-station={name} data-height-um={heightUm} data-u-um={uUm}>
            <th scope="row">{name}</th>
            <td>{heightLabel(heightUm, 0.1, sides)}</td>
            <td>{(2 * uUm).toFixed(1)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
