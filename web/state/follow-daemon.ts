import { exportPath } from './api.ts';
import { openRecording } from './open-files.ts';
import type { Page } from './page.ts';

/** Where the daemon plays a recording, the page opens the same and plays it by itself. */
export function followDaemon(page: Page): void {
  let opened: string | null = null;
  page.store.watch(() => {
    const { player, replay } = page.store.get();
    if (!player) opened = null;
    if (!player || replay || opened === player.recording) return;
    opened = player.recording;
    void openRecording(page, 'api/replayed').then(() => {
      if (!page.store.get().replay) void openRecording(page, exportPath(player.recording, ''));
    });
  });
}
