import type { Session } from '../session/fold.ts';
import { placeWords } from '../survey/plan.ts';
import type { Notice } from './notice.ts';

/** Takes that count although they were made before the reading was steady, because somebody insisted. */
export function unsettled({ counted }: Session): Notice[] {
  const places = [...counted.values()]
    .filter(({ steadiness }) => steadiness !== null && steadiness !== 'steady')
    .map(({ place }) => place);
  const [place] = places;
  if (!place) return [];
  const names = places.slice(0, 4).map(placeWords).join(', ') + (places.length > 4 ? ' …' : '');
  return [
    {
      code: 'unsettled',
      text: `Taken before it was steady: ${names}. Repeat when it is quiet.`,
      place,
      warns: false,
    },
  ];
}
