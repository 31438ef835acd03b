import { useEffect, useRef, useState } from 'preact/hooks';
import { armed, feel, type HandsFree, spent } from '../../../shared/live/hands-free.ts';
import type { BenchStream, Live } from '../../../shared/messages.ts';
import type { Pose } from '../../../shared/proving/proving.ts';
import { say } from '../../words/say.ts';

/** A reading for the proving. */
export interface Taken {
  readonly value: number;
  readonly spread: number | null;
}

interface Taking {
  /** Takes what the needle shows now; says what is in the way, or null. */
  take(insist: boolean): string | null;
  readonly handsFree: boolean;
  switchHandsFree(): void;
}

/**
 * Reads poses off a needle: when asked, at rest after a movement, or, where an instrument speaks by its own button,
 * when that is pressed.
 */
export function useTaking(
  stream: BenchStream | null,
  live: Live | undefined,
  pose: Pose | null,
  onTaken: (taken: Taken) => void,
): Taking {
  const felt = useRef<HandsFree>(armed);
  const lastM = useRef(live?.m);
  const [handsFree, setHandsFree] = useState(true);

  const put = (taken: Taken) => {
    felt.current = spent;
    onTaken(taken);
  };
  const take = (insist: boolean): string | null => {
    if (stream?.byButton) return say('press its button: that takes');
    if (!live || live.value === null) return say('there is no reading to take');
    const steady = live.steadiness === 'steady' && live.mean !== null;
    if (!steady && !insist) return say('the reading has not settled: wait, or take it anyway');
    put(steady ? { value: live.mean!, spread: live.spread } : { value: live.value, spread: live.spread });
    return null;
  };
  useEffect(() => {
    if (!live || live.m === lastM.current) return;
    lastM.current = live.m;
    if (stream?.byButton) {
      if (pose && live.value !== null && !live.bounced) put({ value: live.value, spread: null });
      return;
    }
    const { state, due } = feel(felt.current, live.value === null ? 'moving' : live.steadiness);
    felt.current = state;
    if (due && handsFree && pose) take(false);
  }, [live]);
  return { take, handsFree, switchHandsFree: () => setHandsFree((on) => !on) };
}
