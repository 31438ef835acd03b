import type { Notice, NoticeCode } from '../../shared/notice/notice.ts';
import { notices } from '../../shared/notice/notices.ts';
import type { TakeEvent } from '../../shared/session/events.ts';
import { fold, type Session } from '../../shared/session/fold.ts';
import { surveyResult } from './survey-result.ts';

/** What readings say when one of them, or a whole walk, was not what it should be. */
const signs: ReadonlySet<NoticeCode> = new Set([
  'slip',
  'suspect',
  'lone-jump',
  'closure',
  'drift',
  'scatter',
]);

/** The first take after which the readings showed that something was wrong, and what was said then. */
export interface FirstSign {
  readonly take: TakeEvent;
  /** How many takes there were with it. */
  readonly nth: number;
  readonly notice: Notice;
}

const remembered = new WeakMap<Session, FirstSign | null>();

/** Null when no reading of the whole survey showed anything. */
export function firstSign(session: Session): FirstSign | null {
  const known = remembered.get(session);
  if (known !== undefined) return known;
  const found = search(session);
  remembered.set(session, found);
  return found;
}

function search({ header, takes }: Session): FirstSign | null {
  const events = takes.map(({ event }) => event);
  for (let nth = 1; nth <= events.length; nth += 1) {
    const then = fold(header, events.slice(0, nth));
    const notice = notices(then, surveyResult(then, 'ends')?.result ?? null).find(({ code }) =>
      signs.has(code),
    );
    if (notice) return { take: events[nth - 1]!, nth, notice };
  }
  return null;
}
