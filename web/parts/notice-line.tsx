import { usePick } from '../state/page.ts';
import { capital } from '../words/kinds.ts';
import type { FirstNotice } from '../words/notices.ts';
import { say } from '../words/say.ts';

/** One line under the sentence: a refusal with its remedy first, else what is odd about the survey. */
export function NoticeLine({ notice, more = [] }: FirstNotice) {
  const refusal = usePick((state) => state.refusal);
  if (refusal) {
    const remedy = refusal.remedy ? ` ${capital(refusal.remedy)}.` : '';
    return (
      <p class="notice warns" role="alert" data-testid="refusal" data-code={refusal.code}>
        <Triangle />
        <span>{`${capital(refusal.message)}.${remedy}`}</span>
      </p>
    );
  }
  if (!notice) return null;
  return (
    <div class={`notice ${notice.warns ? 'warns' : ''}`} data-testid="notice">
      {notice.warns && <Triangle />}
      <span>{notice.text}</span>
      {more.length > 0 && (
        <details class="more-notices">
          <summary>{say('and {count} more', { count: more.length })}</summary>
          <ul>
            {more.map(({ text, warns }) => (
              <li key={text} class={warns ? 'warns' : ''}>
                {text}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

export function Triangle() {
  return (
    <svg width="22" height="20" viewBox="0 0 22 20" aria-hidden="true">
      <path d="M11 2l9 16h-18z" fill="none" stroke="currentColor" stroke-width="2.25" />
    </svg>
  );
}
