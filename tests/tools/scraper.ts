import type { Surface } from '../../daemon/simulate/world.ts';
import type { Random } from './random.ts';

/** A simulated hand with a scraper. */
export interface Hand {
  /** What a pass takes off on the whole, µm. */
  readonly biteUm: number;
  /** Standard deviation of what a pass takes off at one station, as a share of the bite. */
  readonly uneven: number;
}

/** Metal that is scraped: the shape as found, less what has come off at each station. */
export class ScrapedWay {
  readonly #asFound: Surface;
  readonly #xMm: ReadonlyMap<string, number>;
  readonly #offUm = new Map<string, number>();

  constructor(asFound: Surface, xMm: ReadonlyMap<string, number>) {
    this.#asFound = asFound;
    this.#xMm = xMm;
  }

  /** Takes the passes with an uneven hand; never puts metal on. */
  scrape(passes: readonly (readonly string[])[], { biteUm, uneven }: Hand, random: Random): void {
    for (const name of passes.flat()) {
      const off = biteUm * Math.max(0, 1 + uneven * random.normal());
      this.#offUm.set(name, (this.#offUm.get(name) ?? 0) + off);
    }
  }

  /** The shape as it is now; between stations what came off runs straight from one to the next. */
  surface(): Surface {
    const off = [...this.#xMm].map(([name, x]) => [x, this.#offUm.get(name) ?? 0] as const);
    return (x, y) => this.#asFound(x, y) - between(off, x);
  }
}

function between(points: readonly (readonly [number, number])[], x: number): number {
  const right = points.findIndex(([at]) => at >= x);
  if (right <= 0) return points[right === 0 ? 0 : points.length - 1]![1];
  const [[x0, y0], [x1, y1]] = [points[right - 1]!, points[right]!];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
