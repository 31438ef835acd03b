import type { Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey, placementsOf, placeWords } from '../../shared/survey/plan.ts';
import { close } from '../state/actions.ts';
import { alongOf, nearest, runOf } from '../state/on-plan.ts';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import { say } from '../words/say.ts';
import { runTitle } from '../words/sentence.ts';
import { Asking } from './asking.tsx';
import { Control, Row } from './control.tsx';

/** Which place to read again: pointed at on the drawing, or found with the arrow keys. */
export function PlaceQuestion({ place }: { place: Placement }) {
  const page = usePage();
  const session = usePick((state) => state.session);
  const run = session && runOf(session, place.run);
  if (!session || !run) return null;
  const value = session.counted.get(placementKey(place));
  const move = (key: string) => {
    const moved = neighbour(session, place, key);
    if (moved) page.point({ at: 'place', place: moved });
    return moved !== null;
  };
  const aim = async () => {
    if (!(await page.send({ do: 'aim', place }))) page.point(nothing);
  };
  const behind = takenFrom(session, place);
  /** The walk is begun again here: what was read from here on is taken back, the last first, so that it goes on here. */
  const fromHere = async () => {
    for (const take of behind.toReversed()) {
      if (await page.send({ do: 'void', take, reason: say('repeated from here on') })) return;
    }
    page.point(nothing);
  };
  return (
    <Asking
      title={`${placeWords(place)}: ${runTitle(session, run)}${value ? '' : ', not read yet'}`}
      testId="place-question"
      onKey={(key) => {
        if (key === 'Enter') void aim();
        else if (key.toLowerCase() === 'a' && behind.length > 1) void fromHere();
        else return move(key);
        return true;
      }}
    >
      <Row>
        <Control
          word={value ? 'Read it again' : 'Read it next'}
          hint="enter"
          kind="main"
          testId="aim-yes"
          onClick={aim}
        />
        {behind.length > 1 && (
          <Control
            word={say('And all after it')}
            hint={say('A, {count} readings', { count: behind.length })}
            testId="from-here"
            onClick={fromHere}
          />
        )}
        <Control word="Left" hint="left arrow" onClick={() => move('ArrowLeft')} />
        <Control word="Right" hint="right arrow" onClick={() => move('ArrowRight')} />
        {session.runs.length > 1 && (
          <Control
            word={run.reads === 'tilt' ? 'Other walk' : 'Other sweep'}
            hint="up arrow"
            onClick={() => move('ArrowUp')}
          />
        )}
        <Control word="Leave it" hint="escape" onClick={() => close(page)} />
      </Row>
    </Asking>
  );
}

/** Numbers of the takes that count at this place and at all that follow it in its run, in that order; none when this one was not read. */
export function takenFrom(session: Session, place: Placement): number[] {
  const run = session.counted.has(placementKey(place)) ? runOf(session, place.run) : undefined;
  const places = run ? placementsOf(run) : [];
  const at = places.findIndex((other) => placementKey(other) === placementKey(place));
  return places.slice(at).flatMap((other) => session.counted.get(placementKey(other))?.seq ?? []);
}

/** The place beside this one along the part, or the nearest one of another run. */
export function neighbour(session: Session, place: Placement, key: string): Placement | null {
  const at = session.runs.findIndex(({ id }) => id === place.run);
  const run = session.runs[at];
  if (!run) return null;
  if (key === 'ArrowUp' || key === 'ArrowDown') {
    const count = session.runs.length;
    const other = session.runs[(at + (key === 'ArrowUp' ? 1 : count - 1)) % count];
    return other && other !== run ? nearest(session, placementsOf(other), place) : null;
  }
  const step = key === 'ArrowRight' ? 1 : key === 'ArrowLeft' ? -1 : 0;
  if (step === 0) return null;
  const along = alongOf(session, run);
  return along[along.findIndex((other) => placementKey(other) === placementKey(place)) + step] ?? null;
}
