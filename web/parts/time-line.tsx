import { type Mark, startOf } from '../../shared/replay/marks.ts';
import { lastNotBeyond } from '../../shared/replay/search.ts';
import { textWidth } from '../drawing/text-width.ts';
import { useSize } from '../drawing/use-size.ts';
import { usePage } from '../state/page.ts';
import { endOf, goTo, msAt, openStop, placeOfMoment, type Replay, reachOf } from '../state/replay.ts';
import { replaying } from '../state/replaying.ts';
import { lasting } from '../words/live.ts';
import { say } from '../words/say.ts';

const heightPx = 52;
const walkPx = 14;
const middlePx = 28;
const lessonPx = 45;

/** The time line of a recording: walks, waits, takes, gaps and notes; a press anywhere on it jumps there. */
export function TimeLine({ replay }: { replay: Replay }) {
  const page = usePage();
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const lengthMs = Math.max(1, msAt(replay, endOf(replay)));
  const reachMs = msAt(replay, reachOf(replay));
  const px = (ms: number) => 6 + (ms / lengthMs) * (widthPx - 12);
  const shown = replay.playback.marks.filter((mark) => startOf(mark) <= reachMs);
  const atMs = msAt(replay, replay.place);
  const jump = (ms: number) => {
    const place = ms <= 0 ? -1 : lastNotBeyond(replay.playback.recorded.atMs, ms);
    page.turn((state) => replaying(state, (known) => goTo({ ...known, playing: false }, place)));
  };
  return (
    <div class="time-line" ref={ref} data-testid="time-line">
      {widthPx > 0 && (
        <svg width={widthPx} height={heightPx} viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true">
          <path class="thin" d={`M6 ${middlePx}H${px(reachMs)}`} />
          {shown.map((mark) => (
            <MarkDrawn key={`${mark.is} ${startOf(mark)}`} mark={mark} px={px} reachMs={reachMs} />
          ))}
          {reachMs < lengthMs && <Hidden fromPx={px(reachMs)} toPx={px(lengthMs)} />}
          {replay.lesson && <Moments replay={replay} px={px} />}
          <path class="playhead" d={`M${px(atMs)} 4V${heightPx - 2}`} />
        </svg>
      )}
      <input
        type="range"
        min={0}
        max={lengthMs}
        step={1}
        value={atMs}
        aria-label={say('Time into the recording')}
        aria-valuetext={say('{at} of {length}', { at: lasting(atMs), length: lasting(lengthMs) })}
        onInput={(event) => jump(Number(event.currentTarget.value))}
        onPointerUp={(event) => event.currentTarget.blur()}
      />
    </div>
  );
}

interface MarkProps {
  readonly mark: Mark;
  readonly reachMs: number;
  px(ms: number): number;
}

function MarkDrawn({ mark, px, reachMs }: MarkProps) {
  switch (mark.is) {
    case 'walk': {
      const [from, to] = [px(mark.fromMs), px(Math.min(mark.toMs, reachMs))];
      const room = to - from - 8;
      return (
        <g>
          <path class="walk" d={`M${from} 18v-4H${to}v4`} />
          {textWidth(mark.words, 12.5) < room && (
            <text x={from + 4} y={walkPx - 3}>
              {mark.words}
            </text>
          )}
        </g>
      );
    }
    case 'wait':
      return (
        <rect
          class="wait"
          x={px(mark.fromMs)}
          y={middlePx - 4}
          width={Math.max(1, px(mark.toMs) - px(mark.fromMs))}
          height={8}
        />
      );
    case 'take': {
      const x = px(mark.atMs);
      return mark.out === undefined ? (
        <path class="take" d={`M${x} ${middlePx - 10}v20`} />
      ) : (
        <path class="rejected" d={`M${x - 5} ${middlePx - 5}l10 10m0 -10l-10 10`} />
      );
    }
    case 'gap':
      return (
        <rect
          class="gap"
          x={px(mark.fromMs)}
          y={middlePx - 9}
          width={Math.max(3, px(Math.min(mark.toMs, reachMs)) - px(mark.fromMs))}
          height={18}
        />
      );
    case 'note':
      return <path class="written" d={`M${px(mark.atMs)} ${middlePx - 12}v10h9v-7h-9`} />;
    case 'skip':
      return <path class="take" d={`M${px(mark.atMs) - 4} ${middlePx + 6}l8 -12`} />;
    case 'pause':
      return (
        <path class="pause" d={`M${px(mark.atMs) - 5} ${middlePx + 8}l4 -16m2 16l4 -16`}>
          <title>{say('a break of {time}, shortened', { time: lasting(mark.ms) })}</title>
        </path>
      );
  }
}

/** What lies behind a question that is open. */
function Hidden({ fromPx, toPx }: { fromPx: number; toPx: number }) {
  const words = say('hidden until answered');
  const fits = textWidth(words, 12.5) + 16 < toPx - fromPx;
  return (
    <g class="hidden">
      <path class="pause" d={`M${fromPx} ${middlePx}H${toPx}`} />
      {fits && (
        <text x={(fromPx + toPx) / 2} y={middlePx - 6} text-anchor="middle">
          {words}
        </text>
      )}
    </g>
  );
}

/** Notes of the lesson as rings, questions as diamonds: filled when they were met. */
function Moments({ replay, px }: { replay: Replay; px(ms: number): number }) {
  const { lesson, moment } = replay;
  const last = openStop(replay) ?? Number.POSITIVE_INFINITY;
  return (
    <g>
      {lesson?.moments.map(({ is }, k) => {
        if (k > last) return null;
        const x = px(msAt(replay, placeOfMoment(replay, k)));
        const met = k <= moment ? 'met' : '';
        return is === 'note' ? (
          <circle key={k} class={`moment ${met}`} cx={x} cy={lessonPx} r={4} />
        ) : (
          <path key={k} class={`moment ${met}`} d={`M${x} ${lessonPx - 6}l6 6l-6 6l-6 -6z`} />
        );
      })}
    </g>
  );
}
