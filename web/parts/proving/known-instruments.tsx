import { useEffect, useState } from 'preact/hooks';
import type { InstrumentList } from '../../../shared/api.ts';
import { provedSentence } from '../../../shared/proving/instruments.ts';
import type { Proving } from '../../../shared/proving/proving.ts';
import { askInstruments } from '../../state/api.ts';

type Known = InstrumentList['instruments'][number];

const whereWords: Readonly<Record<Known['is'], string>> = {
  typed: 'read by eye',
  found: 'plugged in',
  tie: 'not in its socket; one like it is plugged in',
  absent: 'not plugged in',
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
    return <p class="known wrong">What was proved before can’t be read: see instruments.json.</p>;
  }
  if (list === 'asking' || list.instruments.length === 0) return <div class="known" />;
  return (
    <section class="known">
      <h2>Proved before</h2>
      <table class="recordings">
        <tbody>
          {list.instruments.map(({ proved, is }) => (
            <tr key={proved.proving.name} data-testid="proved-before" data-is={is}>
              <td>
                {`${provedSentence(proved)}.`}
                <p class="soft">
                  {`${proved.day}${proved.proving.by ? ` by ${proved.proving.by}` : ''}, ${whereWords[is]}`}
                </p>
              </td>
              <td class="do">
                {is === 'tie' ? (
                  <button type="button" class="small" onClick={() => onMove(proved.proving)}>
                    Find it: move this one
                  </button>
                ) : (
                  <button type="button" class="small" onClick={() => onUse(proved.proving)}>
                    Use it
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
