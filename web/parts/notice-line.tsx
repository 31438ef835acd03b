import { close } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import type { Notice } from '../words/notices.ts';
import { capital } from '../words/sentence.ts';

/** One line between drawing and controls: a refusal with its remedy first, else what is odd about the survey. */
export function NoticeLine({ notice }: { notice: Notice | null }) {
  const page = usePage();
  const refusal = usePick((state) => state.refusal);
  if (refusal) {
    const what = `${capital(refusal.message)}.`;
    const remedy = refusal.remedy ? ` ${capital(refusal.remedy)}.` : '';
    return (
      <div class="notice warns" role="alert" data-testid="refusal" data-code={refusal.code}>
        <Triangle />
        <span>{what + remedy}</span>
        {refusal.code === 'take.unsteady' && (
          <button
            type="button"
            class="small"
            onClick={() => void page.send({ do: 'take', by: 'button', insist: true })}
          >
            Take it all the same, marked unsteady
          </button>
        )}
        <button type="button" class="small" onClick={() => close(page)}>
          Close
        </button>
      </div>
    );
  }
  return (
    <div class={`notice ${notice?.warns ? 'warns' : ''}`} data-testid="notice">
      {notice?.warns && <Triangle />}
      <span>{notice?.text}</span>
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
