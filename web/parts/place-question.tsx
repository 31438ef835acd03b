import type { Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey, placementsOf, placeWords } from '../../shared/survey/plan.ts';
import { close } from '../state/actions.ts';
import { alongOf, nearest, runOf } from '../state/on-plan.ts';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
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
  return (
    <Asking
      title={`${placeWords(place)}: ${runTitle(session, run)}${value ? '' : ', not read yet'}`}
      testId="place-question"
      onKey={(key) => {
        if (key !== 'Enter') return move(key);
        void aim();
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
