import { openLesson, openRecording } from './open-files.ts';
import type { Page } from './page.ts';

/**
 * What the address asks for behind its #: `#lesson=clean-walk` opens that lesson, `#replayed` the recording that the
 * daemon was started to play.
 */
export function openFromAddress(page: Page): void {
  const lesson = /^#lesson=([a-z0-9-]+)$/.exec(location.hash)?.[1];
  if (lesson) void openLesson(page, lesson);
  if (location.hash === '#replayed') void openRecording(page, 'api/replayed');
}
