import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import { type Lesson, readLesson } from '../../shared/lesson/lesson.ts';
import { say } from '../words/say.ts';
import type { Page } from './page.ts';
import { type Playback, playbackOf } from './replay.ts';
import { openReplay, replaying } from './replaying.ts';

/** A file as a person hands it to the page. */
export interface Handed {
  readonly name: string;
  text(): Promise<string>;
}

/**
 * Opens what was dropped on the page or chosen: a recording, a lesson, or both at once. A lesson alone is laid beside
 * the recording that is open. What is wrong is said on the page.
 */
export async function openFiles(page: Page, files: readonly Handed[]): Promise<void> {
  await saying(page, async () => {
    let playback: Playback | null = null;
    let lesson: Lesson | null = null;
    for (const file of files) {
      const text = await file.text();
      if (isLesson(text)) lesson = readLesson(text);
      else playback = playbackOf(text, file.name);
    }
    playback ??= page.store.get().replay?.playback ?? null;
    if (lesson && !playback) playback = await shipped(`${lesson.recording}.jsonl`);
    if (playback) page.turn((state) => openReplay(state, playback, lesson));
  });
}

/** Opens a recording that the daemon has. */
export async function openRecording(page: Page, path: string): Promise<void> {
  await saying(page, async () => {
    const playback = playbackOf(await fetched(path), 'recording');
    page.turn((state) => openReplay(state, playback, null));
  });
}

/** Opens one of the lessons that come with the page. */
export async function openLesson(page: Page, id: string): Promise<void> {
  await saying(page, async () => {
    const [lesson, playback] = await Promise.all([
      fetched(`lessons/${id}.lesson.json`).then(readLesson),
      shipped(`${id}.jsonl`),
    ]);
    page.turn((state) => openReplay(state, playback, lesson));
  });
}

/** Lays another recording beside the one that is open: from a file, or one that the daemon has. */
export async function layBeside(page: Page, from: Handed | string): Promise<void> {
  await saying(page, async () => {
    const beside =
      typeof from === 'string'
        ? playbackOf(await fetched(from), 'recording')
        : playbackOf(await from.text(), from.name);
    page.turn((state) => replaying({ ...state, refusal: null }, (replay) => ({ ...replay, beside })));
  });
}

const shipped = async (name: string) => playbackOf(await fetched(`lessons/${name}`), name);

/** A document that calls itself a lesson, or that is neither a recording nor anything else known. */
function isLesson(text: string): boolean {
  if (/^\s*\{\s*"recording"\s*:\s*\d/.test(text)) return false;
  return /"lesson"\s*:/.test(text.slice(0, 400)) || /^\s*\{[\s\S]*"moments"\s*:/.test(text);
}

async function fetched(path: string): Promise<string> {
  const response = await fetch(path).catch(() => null);
  if (response?.ok) return response.text();
  throw new WayscribeError(
    'recording.notFound',
    path,
    'cannot be read from here',
    'see whether the tool is running, or drop the file on the page',
  );
}

async function saying(page: Page, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    if (!isWayscribeError(error)) throw error;
    const refusal = {
      code: error.code,
      place: error.place,
      message: say('this cannot be opened ({place}: {what})', { place: error.place, what: error.detail }),
      remedy: error.remedy,
    };
    page.change({ refusal });
  }
}
