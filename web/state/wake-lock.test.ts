import { expect, test } from 'vitest';
import { keepAwake } from './wake-lock.ts';

/** A browser's side: how many locks are held, and a way to take them away as it does when the page is hidden. */
function screens(refuses = false) {
  const held = new Set<() => void>();
  return {
    held,
    hide: () => [...held].forEach((letGo) => void letGo()),
    async request() {
      if (refuses) throw new Error('not allowed');
      let heard = () => {};
      const letGo = () => {
        held.delete(letGo);
        heard();
      };
      held.add(letGo);
      return {
        release: async () => letGo(),
        addEventListener: (_: 'release', listener: () => void) => {
          heard = listener;
        },
      };
    },
  };
}

const settled = () => new Promise((resolve) => setImmediate(resolve));

test('the screen is held while a survey is walked, and let go behind it', async () => {
  const browser = screens();
  let walking = false;
  const lock = keepAwake(browser, () => walking);
  lock.look();
  await settled();
  expect(browser.held.size).toBe(0);
  walking = true;
  lock.look();
  lock.look();
  await settled();
  lock.look();
  await settled();
  expect(browser.held.size).toBe(1);
  browser.hide();
  lock.look();
  await settled();
  expect(browser.held.size, 'held again when the page is back').toBe(1);
  walking = false;
  lock.look();
  await settled();
  expect(browser.held.size).toBe(0);
});

test('what ended while the browser was asked is let go', async () => {
  const browser = screens();
  let walking = true;
  keepAwake(browser, () => walking).look();
  walking = false;
  await settled();
  await settled();
  expect(browser.held.size).toBe(0);
});

test('a browser that refuses, or has no such thing, changes nothing', async () => {
  keepAwake(screens(true), () => true).look();
  keepAwake(undefined, () => true).look();
  await settled();
});
