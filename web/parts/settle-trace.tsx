import { useEffect, useRef } from 'preact/hooks';
import { useInk } from '../drawing/ink.ts';
import { createSettleChart, type SettleChart } from '../drawing/settle-chart.ts';
import { useSize } from '../drawing/use-size.ts';
import { staleness } from '../state/needle.ts';
import { usePick } from '../state/page.ts';
import { lasting } from '../words/live.ts';

const heightPx = 62;

/** The needle over the last ten seconds with the band that counts as steady, and its state in words. */
export function SettleTrace() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<SettleChart | null>(null);
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const ink = useInk();
  const trace = usePick((state) => state.trace);
  const live = usePick((state) => state.live);
  const stale = usePick((state) => staleness(state) !== null);
  useEffect(() => {
    if (!canvas.current) return;
    chart.current = createSettleChart(canvas.current);
    return () => chart.current?.destroy();
  }, []);
  useEffect(() => {
    if (widthPx === 0) return;
    const middle = live?.mean ?? trace.at(-1)?.value ?? 0;
    const limit = live?.spreadLimit ?? null;
    chart.current?.draw({ widthPx, heightPx, trace, middle, limit, grey: stale }, ink);
  });
  return (
    <div class="trace" ref={ref}>
      <canvas
        ref={canvas}
        width={0}
        height={heightPx}
        role="img"
        aria-label="The reading over the last ten seconds"
      />
      <div class="legend">
        <span>last 10 s</span>
        <Steadiness stale={stale} />
      </div>
    </div>
  );
}

function Steadiness({ stale }: { stale: boolean }) {
  const live = usePick((state) => state.live);
  if (!live || stale) return <span data-testid="steadiness" data-state="none" />;
  const words = live.steadiness === 'steady' ? `steady for ${lasting(live.steadyForMs)}` : live.steadiness;
  return (
    <span class="state" data-testid="steadiness" data-state={live.steadiness}>
      {words}
    </span>
  );
}
