import type { Replay } from '../state/replay.ts';
import { say } from '../words/say.ts';

/** What the marks of the time line mean: only those that this recording has. */
export function TimeLineKey({ replay }: { replay: Replay }) {
  const there = new Set(replay.playback.marks.map(({ is }) => is));
  const rejected = replay.playback.marks.some((mark) => mark.is === 'take' && mark.out !== undefined);
  return (
    <p class="key">
      <Key d="M9 1v12" name="take" words={say('take')} />
      {rejected && <Key d="M4 2l10 10m0 -10l-10 10" name="rejected" words={say('rejected')} />}
      {there.has('wait') && <Key d="M1 4h16v7h-16z" name="wait" words={say('waiting for rest')} />}
      {there.has('gap') && <Key d="M5 1h8v12h-8z" name="gap" words={say('nothing heard')} />}
      {there.has('note') && <Key d="M4 1v12h0M4 1h10v7h-10" name="written" words={say('note')} />}
      {there.has('skip') && <Key d="M5 13l8 -12" name="take" words={say('skipped')} />}
      {there.has('pause') && <Key d="M4 13l3 -12m3 12l3 -12" name="pause" words={say('break, shortened')} />}
      {replay.lesson && (
        <>
          <Key d="M9 3a4 4 0 1 0 .1 0z" name="moment" words={say('word of the teacher')} />
          <Key d="M9 1l6 6l-6 6l-6 -6z" name="moment" words={say('question')} />
        </>
      )}
    </p>
  );
}

function Key({ d, name, words }: { d: string; name: string; words: string }) {
  return (
    <span>
      <svg width="18" height="14" viewBox="0 0 18 14" aria-hidden="true">
        <path class={name} d={d} />
      </svg>
      {words}
    </span>
  );
}
