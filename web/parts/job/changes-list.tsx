import { useState } from 'preact/hooks';
import { changeText } from '../../../shared/job/change-text.ts';
import { withdrawalOf } from '../../../shared/job/withdrawal.ts';
import { dayText } from '../../words/job.ts';
import { say } from '../../words/say.ts';
import { Field } from '../field.tsx';
import type { Desk } from './desk.ts';

/** Everything that was written into the job, the newest first. What was wrong is withdrawn, and stays with the reason. */
export function ChangesList({ desk }: { desk: Desk }) {
  const { changes } = desk.open.job;
  const [of, setOf] = useState<number | null>(null);
  const [reason, setReason] = useState('');
  const withdraw = async () => {
    if (of === null || !reason.trim()) return;
    if (await desk.write({ change: 'withdrawn', of, reason: reason.trim() })) return;
    setOf(null);
    setReason('');
  };
  return (
    <details class="fold">
      <summary data-testid="changes-fold">
        {say('All that was written down: {count}', { count: changes.length })}
      </summary>
      <ul class="plain-list" data-testid="changes">
        {changes.toReversed().map((change) => {
          const gone = withdrawalOf(change, changes);
          return (
            <li key={change.no} data-change={change.no}>
              <span>{`${change.no} · ${dayText(change.at)} · ${change.by} · ${changeText(change)}`}</span>
              {gone && <span class="wrong">{` ${say('withdrawn by {no}', { no: gone.no })}`}</span>}
              {!gone && change.change !== 'withdrawn' && of !== change.no && (
                <button type="button" class="small" onClick={() => setOf(change.no)}>
                  {say('Withdraw')}
                </button>
              )}
              {of === change.no && (
                <form
                  onSubmit={(event) => {
                    event.preventDefault();
                    void withdraw();
                  }}
                >
                  <Field
                    label={say('Why? The entry stays, and no longer counts.')}
                    name="withdraw-reason"
                    value={reason}
                    focus
                    onInput={setReason}
                  />
                  <button type="submit" class="small" disabled={!reason.trim()} data-testid="withdraw">
                    {say('Withdraw it')}
                  </button>
                </form>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
