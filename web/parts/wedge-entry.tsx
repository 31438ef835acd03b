import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { type Burst, brokenOff, brokenOffMs, key } from '../../shared/live/keyed.ts';
import { usePage, usePick } from '../state/page.ts';
import { say } from '../words/say.ts';
import { keysAstray } from './keys-astray.ts';

/**
 * For an instrument that poses as a keyboard. While the field listens every key is its own: nothing reaches the
 * shortcuts of the page. When it does not listen that is to be seen from afar, and what comes then is let go.
 */
export function WedgeEntry() {
  const page = usePage();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const burst = useRef<Burst | null>(null);
  const timer = useRef(0);
  /** What was asked back: sent again alike, it counts. */
  const askedBack = useRef<string | null>(null);
  const [shown, setShown] = useState('');
  const [said, setSaid] = useState<string | null>(null);
  const [listens, setListens] = useState(false);
  const next = usePick((state) => state.session?.next ?? null);
  const listen = () => field.current?.focus();
  useEffect(listen, [next]);
  useEffect(
    () =>
      keysAstray(() => {
        setSaid(
          say('Something was typed while this field did not listen: nothing was taken. Send it again.'),
        );
        listen();
      }),
    [],
  );

  const settle = (held: Burst | null) => {
    burst.current = held;
    setShown(held?.text ?? '');
    clearTimeout(timer.current);
    // What broke off waits for its end, however long that takes.
    if (!held || held.rest) return;
    timer.current = window.setTimeout(() => {
      burst.current = brokenOff(Date.now());
      setShown('');
      setSaid(say('"{text}" had no end: nothing was taken. Send it again.', { text: held.text }));
    }, brokenOffMs);
  };
  const typed = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    event.stopPropagation();
    if (event.key === 'Escape') return field.current?.blur();
    event.preventDefault();
    const { burst: held, outcome } = key(burst.current, event.key, Date.now());
    settle(held);
    if (!outcome) return;
    if (outcome.is === 'void' && outcome.why === 'rest') {
      return setSaid(
        say('"{text}" may be the rest of what broke off: nothing was taken. Send it again.', {
          text: outcome.text,
        }),
      );
    }
    if (outcome.is === 'void') {
      return setSaid(say('"{text}" broke off: nothing was taken. Send it again.', { text: outcome.text }));
    }
    setSaid(null);
    const { text, keyed } = outcome;
    void page.send({ do: 'type', text, keyed, again: text === askedBack.current }).then((refusal) => {
      askedBack.current = refusal?.code === 'take.farOff' ? text : null;
    });
  };
  return (
    <section class="typed wedge" data-listens={listens} data-testid="wedge">
      <label for={id}>
        {listens ? say('Listening: send from the instrument') : say('Not listening to the instrument')}
      </label>
      <input
        id={id}
        ref={field}
        data-testid="wedge-field"
        readOnly
        autocomplete="off"
        value={listens ? shown : say('press here')}
        onKeyDown={typed}
        onFocus={() => setListens(document.hasFocus())}
        onBlur={() => {
          settle(burst.current && brokenOff(Date.now()));
          setListens(false);
        }}
      />
      <p role="status">
        {said ?? say('A reading counts when its end has come. Escape leads to the other keys.')}
      </p>
    </section>
  );
}
