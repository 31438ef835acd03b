import type { ProvedInstrument } from '../../shared/proving/instruments.ts';
import { upward } from '../../shared/proving/quantity-words.ts';
import { unitFactor } from '../../shared/units.ts';
import { unitWord } from './live.ts';
import { say } from './say.ts';

/** What a set-up says of an instrument. */
export interface Claimed {
  readonly source: string;
  /** Identity of its adapter or path of its port; undefined where none is said. */
  readonly port?: string | undefined;
  readonly profile?: string | undefined;
  readonly unit: string;
  readonly graduation: number | null;
  readonly sigma: number | null;
  /** Which way the metal stands when an indicator says plus. */
  readonly plus?: string | undefined;
}

/** A spread that is said to be so many times more or less than it was proved to be is another one. */
const otherSpread = 2;

/** Where a set-up says something else of an instrument than was proved of it, in plain words. */
export function contradictions(claimed: Claimed, { sign, sigma, proving }: ProvedInstrument): string[] {
  const { name, reads, source, unit, graduation, port, profile } = proving;
  if (claimed.source !== source) {
    return [
      source === 'cable'
        ? say('{name} was proved over a cable, and here it is read by eye.', { name })
        : say('{name} was proved by eye, and here it hangs on a cable.', { name }),
    ];
  }
  const found: string[] = [];
  const quantity = reads === 'tilt' ? 'tilt' : 'height';
  const size = (of: string, count: number) => count * unitFactor(quantity, of);
  const same =
    claimed.graduation === null ||
    Math.abs(size(claimed.unit, claimed.graduation) / size(unit, graduation) - 1) < 1e-9;
  if (!same) {
    const values = {
      name,
      proved: `${graduation} ${unitWord(unit)}`,
      said: `${claimed.graduation} ${unitWord(claimed.unit)}`,
      times: times(size(claimed.unit, claimed.graduation ?? 1) / size(unit, graduation)),
    };
    found.push(
      say(
        'One count of {name} was proved to be {proved}; here it is {said}: every height would come out {times} times as large.',
        values,
      ),
    );
  }
  if (reads === 'height' && claimed.plus !== undefined && claimed.plus !== (sign > 0 ? 'high' : 'low')) {
    found.push(
      sign > 0
        ? say(
            'Plus of {name} was proved to mean HIGH; here it means low: hills and hollows would change places.',
            {
              name,
            },
          )
        : say(
            'Plus of {name} was proved to mean LOW; here it means high: hills and hollows would change places.',
            {
              name,
            },
          ),
    );
  }
  const ratio = claimed.sigma === null ? 1 : claimed.sigma / sigma;
  if (same && (ratio > otherSpread || ratio < 1 / otherSpread)) {
    found.push(
      say('{name} was proved to spread by {proved}; here it is {said}.', {
        name,
        proved: upward(proving, sigma),
        said: upward(proving, claimed.sigma ?? sigma),
      }),
    );
  }
  if (profile !== undefined && claimed.profile && claimed.profile !== profile) {
    found.push(
      say('{name} was proved with another way of talking ({proved}): its readings may mean something else.', {
        name,
        proved: profile,
      }),
    );
  }
  if (port !== undefined && claimed.port && claimed.port !== port) {
    found.push(
      say('{name} was proved on another port ({proved}): see that it is the same one.', {
        name,
        proved: port,
      }),
    );
  }
  return found;
}

function times(ratio: number): string {
  return String(Number(ratio.toPrecision(3)));
}
