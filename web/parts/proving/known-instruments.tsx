import { useEffect, useState } from 'preact/hooks';
import type { InstrumentList } from '../../../shared/api.ts';
import { provedSentence } from '../../../shared/proving/instruments.ts';
import type { Proving } from '../../../shared/proving/proving.ts';
import { askInstruments } from '../../state/api.ts';
import { say, text } from '../../words/say.ts';

type Known = InstrumentList['instruments'][number];

const whereWords: Readonly<Record<Known['is'], string>> = {
  typed: text('read by eye'),
  found: text('plugged in'),
  tie: text('not in its socket; one like it is plugged in'),
  absent: text('not plugged in'),
};

interface KnownInstrumentsProps {
  onUse(proving: Proving): void;
  onMove(proving: Proving): void;
}

/** What was proved before: to be used as it is, or, when it is not where it was, to be found by moving it. */
export function KnownInstruments({ onUse, onMove }: KnownInstrumentsProps) {
  const [list, setList] = useState<InstrumentList | null | 'asking'>('asking');
  useEffect(() => void askInstruments().then(setList), []);
  if (list === null) {
    return <p class="known wrong">{say('What was proved before can’t be read: see instruments.json.')}</p>;
  }
  if (list === 'asking' || list.instruments.length === 0) return <div class="known" />;
  return (
    <section class="known">
      <h2>{say('Proved before')}</h2>
      <table class="recordings">
        <tbody>
          {list.instruments.map(({ proved, is }) => (
            <tr key={proved.proving.name} data-testid="proved-before" data-is={is}>
              <td>
                {`${provedSentence(proved)}.`}
                <p class="soft">{whenWords(proved, is)}</p>
              </td>
              <td class="do">
                {is === 'tie' ? (
                  <button type="button" class="small" onClick={() => onMove(proved.proving)}>
                    {say('Find it: move this one')}
                  </button>
                ) : (
                  <button type="button" class="small" onClick={() => onUse(proved.proving)}>
                    {say('Use it')}
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** When and by whom it was proved, and where it is now. */
function whenWords({ day, proving }: Known['proved'], is: Known['is']): string {
  const where = say(whereWords[is]);
  return proving.by
    ? say('{day} by {person}, {where}', { day, person: proving.by, where })
    : say('{day}, {where}', { day, where });
}
