import type { Live, SentError } from '../../shared/messages.ts';
import type { Session } from '../../shared/session/fold.ts';

/** Whether what was refused would be refused still: a refusal goes when its reason has gone. */
export function stillTrue(
  { code }: SentError,
  { live, session }: { live: Live | null; session: Session | null },
): boolean {
  switch (code) {
    case 'take.unsteady':
      return live?.steadiness !== 'steady';
    case 'take.notReArmed':
      return live?.armed !== true;
    case 'take.silent':
    case 'take.state':
      return live === null || live.state !== 'ok';
    case 'take.bounced':
      return live?.bounced === true;
    case 'take.unitChanged':
      return session?.unitAlarm != null;
    default:
      return true;
  }
}
