import { type Placement, placementKey, type Run, type TiltRun } from '../../../shared/survey/plan.ts';
import type { PlanView, Point } from './plan-view.ts';
import type { PlateSession } from './plate-session.ts';

interface PatternProps {
  readonly view: PlanView;
  readonly session: PlateSession;
  /** The placement to make next; its line is laid out. */
  readonly place: Placement | null;
  pointOf(name: string): Point;
}

/** The lines of the pattern: what is walked is bold, what is to come thin, the one to walk now in the live colour. */
export function PatternLines({ session, place, pointOf }: PatternProps) {
  const { plan } = session;
  const run = plan.runs.find(({ id }) => id === place?.run);
  const feet = new Set([...session.counted.values()].flatMap(({ place }) => place.at));
  const read = new Set([...session.counted.values()].map(({ place }) => place.at.join('-')));
  const between = ([from, to]: readonly [string, string]) => {
    const [a, b] = [pointOf(from), pointOf(to)];
    return `M${a.x} ${a.y}L${b.x} ${b.y}`;
  };
  const stepsOf = (names: readonly string[]) =>
    names.slice(1).map((name, k): [string, string] => [names[k]!, name]);
  const steps = Object.values(plan.lines).flatMap(stepsOf);
  const fresh = session.takes.at(-1)?.event;
  const [dot, hollow] = dotPx(session, pointOf);
  return (
    <g>
      <path
        class="pattern"
        d={steps
          .filter((step) => !read.has(step.join('-')))
          .map(between)
          .join('')}
      />
      <path
        class="pattern done"
        d={steps
          .filter((step) => read.has(step.join('-')))
          .map(between)
          .join('')}
      />
      {run && <LaidOut session={session} run={run} pointOf={pointOf} />}
      {plan.stations.map(({ name }) => {
        const { x, y } = pointOf(name);
        return feet.has(name) ? (
          <circle key={name} data-at={name} class="station done" cx={x} cy={y} r={dot} />
        ) : (
          <circle key={name} data-at={name} class="station" cx={x} cy={y} r={hollow} />
        );
      })}
      {fresh && !session.ended && (
        <circle
          key={fresh.seq}
          class="fresh"
          cx={pointOf(fresh.place.at.at(-1)!).x}
          cy={pointOf(fresh.place.at.at(-1)!).y}
          r={4}
        />
      )}
    </g>
  );
}

/** Dots small enough to stay apart. */
function dotPx({ plan }: PlateSession, pointOf: PatternProps['pointOf']): [number, number] {
  const gaps = Object.values(plan.lines).map(([first, second]) => {
    const [a, b] = [pointOf(first ?? ''), pointOf(second ?? '')];
    return Math.hypot(b.x - a.x, b.y - a.y);
  });
  const dot = Math.min(4, Math.max(1.5, Math.min(...gaps) / 6));
  return [dot, Math.min(3, dot)];
}

/** What of a run is still open, with its start while nothing of it is read, and an arrow at its end. */
function LaidOut({
  session,
  run,
  pointOf,
}: {
  session: PlateSession;
  run: Run;
  pointOf: PatternProps['pointOf'];
}) {
  if (run.reads !== 'tilt') return null;
  const open = run.feet.filter((at) => !session.counted.has(placementKey({ run: run.id, at })));
  const { start, end } = endsOf(run);
  const [from, to] = [pointOf(start), pointOf(end)];
  const path = open
    .map(([a, b]) => `M${pointOf(a).x} ${pointOf(a).y}L${pointOf(b).x} ${pointOf(b).y}`)
    .join('');
  const angle = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return (
    <g class="laid-out">
      <path class="casing" d={path} />
      <path d={path} />
      {open.length === run.feet.length && <circle class="start" cx={from.x} cy={from.y} r={8} />}
      {open.length > 0 && (
        <path class="tip" d="M0 0l-13 -5v10z" transform={`translate(${to.x} ${to.y}) rotate(${angle})`} />
      )}
    </g>
  );
}

/** The stations at which a walk starts and ends, whichever way the feet are named. */
function endsOf({ feet }: TiltRun): { start: string; end: string } {
  const [first, second] = feet;
  const last = feet.at(-1)!;
  const forwards = !second || second[0] === first![1];
  return forwards ? { start: first![0], end: last[1] } : { start: first![1], end: last[0] };
}
