import type { Facts } from './facts.ts';
import { truthError } from './true-line.ts';

const rounded = (value: number) => Number(value.toFixed(3));

/** What a lesson's recording comes to, in few numbers, µm and µm/m; and by how much it misses the true metal. */
export function goldenOf(facts: Facts) {
  const { result, header } = facts;
  const { station, offUm } = truthError(header, result);
  return {
    takes: facts.session.takes.length,
    rejected: facts.session.takes.filter(({ out }) => out !== undefined).length,
    straightness: Object.fromEntries(
      Object.entries(result.lines).map(
        ([
          name,
          {
            straightness: { ends, leastSquares, minimumZone },
          },
        ]) => [
          name,
          {
            ends: rounded(ends.valueUm),
            leastSquares: rounded(leastSquares.valueUm),
            minimumZone: rounded(minimumZone.valueUm),
            u: rounded(ends.uUm),
          },
        ],
      ),
    ),
    figures: Object.fromEntries(
      Object.entries(result.figures).map(([name, { value, unit, u }]) => [
        name,
        { value: rounded(value), unit, u: rounded(u) },
      ]),
    ),
    suspect: result.readings.find(({ suspect }) => suspect) !== undefined,
    notices: facts.codes,
    truthError: { station, offUm: rounded(offUm) },
  };
}
