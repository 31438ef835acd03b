import type { Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey } from '../../shared/survey/way.ts';
import { close } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import { pairText } from '../words/sentence.ts';
import { Asking } from './asking.tsx';
import { Control, Row } from './control.tsx';

/** Which place to read again: pointed at on the drawing, or found with the arrow keys. */
export function PlaceQuestion({ place }: { place: Placement }) {
  const page = usePage();
  const session = usePick((state) => state.session);
  if (!session) return null;
  const value = session.counted.get(placementKey(place));
  const walk = place.walk === 'out' ? 'going out' : 'coming back';
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
      title={`${pairText(place)}, ${walk}${value ? '' : ': not read yet'}`}
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
        {session.walks.length > 1 && (
          <Control word="Other walk" hint="up arrow" onClick={() => move('ArrowUp')} />
        )}
        <Control word="Leave it" hint="escape" onClick={() => close(page)} />
      </Row>
    </Asking>
  );
}

/** The place beside this one along the way, or the same one on the other walk. */
export function neighbour(session: Session, place: Placement, key: string): Placement | null {
  if (key === 'ArrowUp' || key === 'ArrowDown') {
    const walk = place.walk === 'out' ? 'back' : 'out';
    return session.walks.includes(walk) ? { ...place, walk } : null;
  }
  const step = key === 'ArrowRight' ? 1 : key === 'ArrowLeft' ? -1 : 0;
  if (step === 0) return null;
  const along = session.plan.filter(({ walk }) => walk === place.walk);
  const at = along.findIndex((other) => placementKey(other) === placementKey(place));
  // The plan of the walk back runs from the far end: to the right is to the one before.
  return along[at + (place.walk === 'out' ? step : -step)] ?? null;
}
