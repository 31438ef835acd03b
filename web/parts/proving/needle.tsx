import { useEffect, useRef } from 'preact/hooks';
import type { Live } from '../../../shared/messages.ts';
import type { ReadingUnit } from '../../../shared/session/setup.ts';
import { useInk } from '../../drawing/ink.ts';
import { createSettleChart, type SettleChart } from '../../drawing/settle-chart.ts';
import { useSize } from '../../drawing/use-size.ts';
import { extendTrace, type TracePoint } from '../../state/settle-trace.ts';
import { lasting, sizeText, unitWord } from '../../words/live.ts';
import { say, text } from '../../words/say.ts';

interface NeedleWordsProps {
  readonly live: Live | undefined;
  readonly unit: ReadingUnit;
  /** What plus and minus mean, once that is known. */
  readonly sides?: readonly [plus: string, minus: string] | null;
  /** Why there is nothing live to show. */
  readonly stale?: string | null;
}

/** What the instrument shows now. Until its sign is proved, plus and minus are all that can be said. */
export function NeedleWords({ live, unit, sides, stale }: NeedleWordsProps) {
  const value = live?.value ?? null;
  const digits = value === null ? '—' : sizeText(value, unit);
  const [plus, minus] = sides ?? [say('plus'), say('minus')];
  const side = value === null ? (live ? live.state : say('nothing heard yet')) : value >= 0 ? plus : minus;
  return (
    <section class={`live ${stale ? 'stale' : ''}`} aria-label={say('Live reading')}>
      <div
        class={`digits ${digits.length > 5 ? 'long' : ''}`}
        data-testid="bench-value"
        data-value={value ?? ''}
      >
        {digits}
      </div>
      {stale ? (
        <div class="metal age" data-testid="bench-stale">
          {stale}
        </div>
      ) : (
        <div class="metal">{`${unitWord(unit)}, ${side}`}</div>
      )}
    </section>
  );
}

const heightPx = 62;
const unsteady = { moving: text('moving'), settling: text('settling') };

/** The needle over the last seconds, and whether it has come to rest. */
export function NeedleTrace({ live }: { live: Live | undefined }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<SettleChart | null>(null);
  const trace = useRef<readonly TracePoint[]>([]);
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const ink = useInk();
  useEffect(() => {
    if (!canvas.current) return;
    chart.current = createSettleChart(canvas.current);
    return () => chart.current?.destroy();
  }, []);
  useEffect(() => {
    if (live) trace.current = extendTrace(trace.current, live);
    if (widthPx === 0) return;
    const middle = live?.mean ?? trace.current.at(-1)?.value ?? 0;
    const limit = live?.spreadLimit ?? null;
    chart.current?.draw({ widthPx, heightPx, trace: trace.current, middle, limit, grey: !live }, ink);
  });
  return (
    <div class="trace" ref={ref}>
      <canvas
        ref={canvas}
        width={0}
        height={heightPx}
        role="img"
        aria-label={say('The reading over the last ten seconds')}
      />
      <div class="legend">
        <span>{say('last 10 s')}</span>
        <span class="state" data-testid="bench-steadiness" data-state={live?.steadiness ?? 'none'}>
          {live &&
            (live.steadiness === 'steady'
              ? say('steady for {time}', { time: lasting(live.steadyForMs) })
              : say(unsteady[live.steadiness]))}
        </span>
      </div>
    </div>
  );
}
