import { brokenOffMs } from '../../shared/live/keyed.ts';

/** A reading begins like this; no shortcut of the page does. */
const begins = /^[\d+\-.,]$/;

/**
 * Keeps what an instrument types, while the field for it does not listen, away from the shortcuts of the page: from a
 * digit or a sign on every key is let go until nothing comes any more. `told` is called once for each such burst.
 * @returns ends it
 */
export function keysAstray(told: () => void): () => void {
  let untilMs = 0;
  const watch = (event: KeyboardEvent) => {
    const { target } = event;
    if (target instanceof HTMLElement && target.matches('input, textarea, select')) return;
    const astray = event.timeStamp < untilMs;
    if (!astray && !begins.test(event.key)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    untilMs = event.timeStamp + brokenOffMs;
    clearTimeout(timer);
    timer = window.setTimeout(told, brokenOffMs);
  };
  let timer = 0;
  addEventListener('keydown', watch, { capture: true });
  return () => {
    clearTimeout(timer);
    removeEventListener('keydown', watch, { capture: true });
  };
}
