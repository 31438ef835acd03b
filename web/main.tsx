import '@fontsource/b612/latin-400.css';
import '@fontsource/b612/latin-700.css';
import './style/tokens.css';
import './style/sheet.css';
import './style/controls.css';
import './style/drawing.css';
import './style/bed.css';
import './style/plate.css';
import './style/forms.css';
import './style/proving.css';
import './style/job.css';
import './style/print.css';
import { render } from 'preact';
import { z } from 'zod';
import { listenToKeys } from './state/keys.ts';
import { createPage, PageProvider } from './state/page.ts';
import { recall } from './state/preferences.ts';
import { createSounds } from './state/sound.ts';
import { App } from './views/app.tsx';

// The page's security policy forbids making code from text, which the validator would else try.
z.config({ jitless: true });

const preferred = recall();
const dark = matchMedia('(prefers-color-scheme: dark)');
const url = new URL('ws', location.href);
url.protocol = location.protocol === 'https:' ? 'wss:' : 'ws:';

const page = createPage(url.href, createSounds(), {
  theme: preferred.theme ?? (dark.matches ? 'slate' : 'paper'),
  muted: preferred.muted ?? false,
});

const paint = () => {
  document.documentElement.dataset.theme = page.store.get().theme;
};
paint();
page.store.watch(paint);
dark.addEventListener('change', () => {
  if (!recall().theme) page.change({ theme: dark.matches ? 'slate' : 'paper' });
});
listenToKeys(page);

// Paper is light, whatever the screen is.
let onScreen = page.store.get().theme;
addEventListener('beforeprint', () => {
  onScreen = page.store.get().theme;
  document.documentElement.dataset.theme = 'paper';
  page.change({ theme: 'paper' });
});
addEventListener('afterprint', () => page.change({ theme: onScreen }));

const root = document.getElementById('page');
if (root) {
  render(
    <PageProvider value={page}>
      <App />
    </PageProvider>,
    root,
  );
}
