import type { Session } from '../session/fold.ts';
import { takenRuns } from '../session/taken-runs.ts';
import { placeWords } from '../survey/plan.ts';
import type { Notice } from './notice.ts';

/**
 * The instrument fell silent between two takes of one run: if it was switched off, or its battery changed, its zero may
 * have moved there. Breaks of the daemon are told by themselves.
 */
export function streamLost(session: Session): Notice[] {
  const lost = session.gaps.filter(({ is, from }) => is === 'lost' && from === session.setup.instrument.name);
  const resumed = session.resumed?.seq ?? 0;
  return takenRuns(session).flatMap(({ takes }) => {
    const at = takes.findIndex(
      (take, k) =>
        k > 0 && lost.some(({ seq }) => seq > takes[k - 1]!.seq && seq < take.seq && seq > resumed),
    );
    if (at < 0) return [];
    const [before, after] = [takes[at - 1]!.place, takes[at]!.place];
    return [
      {
        code: 'stream-lost' as const,
        text: `The instrument fell silent between ${placeWords(before)} and ${placeWords(after)}. If it was switched off its zero may have moved: repeat ${placeWords(before)}.`,
        place: before,
        warns: true,
      },
    ];
  });
}
