import { useState } from 'preact/hooks';
import { close } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import { pairText } from '../words/sentence.ts';
import { Control, Row } from './control.tsx';

/** A note, tied to the place where the level stands. */
export function NoteQuestion() {
  const page = usePage();
  const place = usePick((state) => state.session?.next ?? null);
  const [text, setText] = useState('');
  const send = async (event: Event) => {
    event.preventDefault();
    if (!text.trim()) return;
    const refusal = await page.send({ do: 'note', text, ...(place && { place }) });
    if (!refusal) page.point(nothing);
  };
  return (
    <form class="question" onSubmit={send}>
      <label>
        <h2>{place ? `Note at ${pairText(place)}` : 'Note'}</h2>
        <input
          data-testid="note-text"
          maxLength={2000}
          value={text}
          ref={(field) => {
            if (field && document.activeElement !== field) field.focus();
          }}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <Row>
        <Control word="Keep the note" hint="enter" kind="main" submit disabled={!text.trim()} />
        <Control word="No note" hint="escape" onClick={() => close(page)} />
      </Row>
    </form>
  );
}
