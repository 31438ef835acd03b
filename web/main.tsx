import './style/fonts.css';
import './style/tokens.css';
import './style/sheet.css';
import './style/controls.css';
import './style/drawing.css';
import './style/bed.css';
import './style/plate.css';
import './style/forms.css';
import './style/proving.css';
import './style/devices.css';
import './style/player.css';
import './style/lesson.css';
import './style/working.css';
import './style/compare.css';
import './style/help.css';
import './style/job-drawing.css';
import './style/job-forms.css';
import './style/job.css';
import './style/print.css';
import { options, render } from 'preact';
import { z } from 'zod';
import { openFromAddress } from './state/address.ts';
import { pairByAddress } from './state/devices.ts';
import { listenToDrops } from './state/drops.ts';
import { listenToKeys } from './state/keys.ts';
import { createPage, PageProvider } from './state/page.ts';
import type { PageState } from './state/page-state.ts';
import { recall } from './state/preferences.ts';
import { runReplays } from './state/replay-clock.ts';
import { createSounds } from './state/sound.ts';
import { createVoice } from './state/speech.ts';
import { keepAwake } from './state/wake-lock.ts';
import { App } from './views/app.tsx';
import { languageFor } from './words/languages/languages.ts';
import { readIn } from './words/reader.ts';
import { writeForReader } from './write-for-reader.ts';

// The page's security policy forbids making code from text, which the validator would else try.
z.config({ jitless: true });

const preferred = recall();
const dark = matchMedia('(prefers-color-scheme: dark)');
const url = new URL('ws', location.href);
url.protocol = location.protocol === 'https:' ? 'wss:' : 'ws:';

// In a page that is open already, a new address behind the `#` loads nothing by itself.
addEventListener('hashchange', () => location.reload());
const language = preferred.language ?? languageFor(navigator.languages);
await readIn(language);
writeForReader();
const paired = await pairByAddress();
const page = createPage(
  url.href,
  { sounds: createSounds(), voice: createVoice() },
  {
    pairingFailed: paired === false,
    theme: preferred.theme ?? (dark.matches ? 'slate' : 'paper'),
    muted: preferred.muted ?? false,
    speech: preferred.speech ?? false,
    language,
  },
);

const paint = () => {
  const { theme, language } = page.store.get();
  document.documentElement.dataset.theme = theme;
  document.documentElement.lang = language;
};
paint();
page.store.watch(paint);
dark.addEventListener('change', () => {
  if (!recall().theme) page.change({ theme: dark.matches ? 'slate' : 'paper' });
});
listenToKeys(page);
listenToDrops(page);
runReplays(page);
openFromAddress(page);

// A tablet sleeps, and its network comes and goes.
const walking = ({ session, replay }: PageState) => session !== null && !session.ended && replay === null;
const screen = keepAwake(navigator.wakeLock, () => !document.hidden && walking(page.store.get()));
page.store.watch(screen.look);
document.addEventListener('visibilitychange', () => {
  if (!document.hidden) page.wake();
  screen.look();
});
addEventListener('online', page.wake);
addEventListener('pageshow', ({ persisted }) => persisted && page.wake());

// Only an address that the browser holds for safe may keep the page: this computer's own, or one by https.
navigator.serviceWorker?.register('./service-worker.js').catch(() => {});

// Paper is light, whatever the screen is.
let onScreen = page.store.get().theme;
matchMedia('print').addEventListener('change', ({ matches }) => {
  if (matches) onScreen = page.store.get().theme;
  // The print is made as soon as this returns: nothing may be drawn later.
  options.debounceRendering = (draw) => draw();
  page.change({ theme: matches ? 'paper' : onScreen });
  delete options.debounceRendering;
});

const root = document.getElementById('page');
if (root) {
  render(
    <PageProvider value={page}>
      <App />
    </PageProvider>,
    root,
  );
}
