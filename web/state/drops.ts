import { say } from '../words/say.ts';
import { openFiles } from './open-files.ts';
import type { Page } from './page.ts';

/** Files that are dropped anywhere on the page are opened. */
export function listenToDrops(page: Page): void {
  addEventListener('dragover', (event) => event.preventDefault());
  addEventListener('drop', (event) => {
    event.preventDefault();
    const files = [...(event.dataTransfer?.files ?? [])];
    // In the middle of a survey nothing takes its place.
    const { session, replay, behind } = page.store.get();
    const busy = (behind ?? { session }).session;
    if (files.length === 0) return;
    if (busy && !busy.ended && !replay) {
      page.change({
        refusal: {
          code: 'command.refused',
          place: 'survey',
          message: say('a survey is on'),
          remedy: say('finish it or put it aside, then drop the file again'),
        },
      });
      return;
    }
    void openFiles(page, files);
  });
}
