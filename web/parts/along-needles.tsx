import type { InstrumentState, Live } from '../../shared/messages.ts';
import type { InstrumentSetup } from '../../shared/session/setup.ts';
import { linkStaleness } from '../state/needle.ts';
import { usePick } from '../state/page.ts';
import { sizeText, unitWord } from '../words/live.ts';
import { say } from '../words/say.ts';

/** The needles of the instruments that listen along, in one line. */
export function AlongNeedles() {
  const setup = usePick((state) => state.session?.setup);
  const instruments = usePick((state) => state.instruments);
  const needles = usePick((state) => state.needles);
  const replay = usePick((state) => state.replay !== null);
  const first = usePick(
    (state) => state.session?.takes.find(({ event }) => event.reference)?.event.reference ?? null,
  );
  if (!setup?.others) return null;
  return (
    <section class="along" aria-label={say('Others that listen along')} data-testid="along-needles">
      {setup.others.map((one) => (
        <AlongNeedle
          key={one.name}
          setup={one}
          still={one.name === setup.reference?.name}
          first={first?.from === one.name ? first.value : null}
          live={needles[one.name]}
          instrument={replay ? undefined : instruments.find(({ name }) => name === one.name)}
        />
      ))}
    </section>
  );
}

interface AlongNeedleProps {
  readonly setup: InstrumentSetup;
  readonly still: boolean;
  /** What it read at the first take, when it is the one that stays put. */
  readonly first: number | null;
  readonly live: Live | undefined;
  readonly instrument: InstrumentState | undefined;
}

function AlongNeedle({ setup: { name, unit }, still, first, live, instrument }: AlongNeedleProps) {
  const stale = instrument ? linkStaleness(instrument) : null;
  const believed = stale === null && live?.value != null;
  const minus = believed && live.value! < 0 ? say('minus ') : '';
  return (
    <p data-stale={!believed} data-testid={`along-${name}`}>
      <span class="name">{still ? say('{name} stays put', { name }) : name}</span>
      <span class="value">
        {believed
          ? say('{minus}{size} {unit}', { minus, size: sizeText(live.value!, unit), unit: unitWord(unit) })
          : (stale ?? say('nothing heard yet'))}
      </span>
      {believed && <span class="soft">{steadyWords[live.steadiness]()}</span>}
      {believed && first !== null && (
        <span class="soft">
          {say('{size} {unit} from where it was at the first take', {
            size: sizeText(live.value! - first, unit),
            unit: unitWord(unit),
          })}
        </span>
      )}
    </p>
  );
}

const steadyWords = {
  moving: () => say('moving'),
  settling: () => say('settling'),
  steady: () => say('steady'),
} as const;
