import { openLesson } from './open-files.ts';
import type { Page } from './page.ts';

/** What the address asks for behind its #: `#lesson=clean-walk` opens that lesson. */
export function openFromAddress(page: Page): void {
  const open = () => {
    const id = /^#lesson=([a-z0-9-]+)$/.exec(location.hash)?.[1];
    if (id) void openLesson(page, id);
  };
  open();
  addEventListener('hashchange', open);
}
