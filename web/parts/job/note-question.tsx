import { recheckBecauseOf } from '../../../shared/job/job.ts';
import type { AskedChange } from '../../../shared/job/wire.ts';
import { usePage } from '../../state/page.ts';
import { nothing } from '../../state/page-state.ts';
import { say } from '../../words/say.ts';
import { TextQuestion } from '../text-question.tsx';
import type { Desk } from './desk.ts';

/** A note for the job; where the surface stands to be checked again, the note may be how it was checked. */
export function NoteQuestion({ desk }: { desk: Desk }) {
  const page = usePage();
  const { surface, open, write } = desk;
  const keep = async (change: AskedChange) => {
    if (!(await write(change))) page.point(nothing);
  };
  const recheck = surface ? recheckBecauseOf(open.job, surface.name) : [];
  if (surface && recheck.length > 0) {
    return (
      <TextQuestion
        title={say('How was {surface} checked, and found to stand?', { surface: surface.name })}
        answer={say('It is checked')}
        longest={2000}
        testId="checked-text"
        onAnswer={(why) => void keep({ change: 'checked', surface: surface.name, why })}
      />
    );
  }
  return (
    <TextQuestion
      title={say('Note for the job')}
      answer={say('Keep the note')}
      longest={2000}
      testId="job-note-text"
      onAnswer={(text) => void keep({ change: 'note', text })}
    />
  );
}
