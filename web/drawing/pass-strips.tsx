import type { Result } from '../../shared/sheet/result.ts';
import { say } from '../words/say.ts';
import type { Across } from './across.ts';
import { PassStrip } from './bed/pass-strip.tsx';

interface PassStripsProps {
  readonly across: Across;
  readonly stations: readonly { readonly name: string; readonly xMm: number }[];
  readonly strips: readonly { readonly line: string; readonly metal: Result['metal'][string] }[];
}

/** What to scrape of each line, one strip a line; one pass is as high in all of them. */
export function PassStrips({ across, stations, strips }: PassStripsProps) {
  const most = Math.max(
    0,
    ...strips.flatMap(({ metal }) => Object.values(metal.stations).map(({ passes }) => passes)),
  );
  return (
    <div class="strips" data-testid="pass-strips">
      <p class="caption-line">
        {say('Passes to scrape, a suggestion. Hatched: less than its own uncertainty, leave it.')}
      </p>
      {strips.map(({ line, metal }) => (
        <PassStrip
          key={line}
          across={across}
          {...(strips.length > 1 && { title: line })}
          stations={stations}
          metal={metal}
          mostPasses={most}
        />
      ))}
    </div>
  );
}
