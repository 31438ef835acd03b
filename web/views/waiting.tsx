import { FileOpener } from '../parts/file-opener.tsx';
import { Lessons } from '../parts/lessons.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { usePick } from '../state/page.ts';

/** Before the first word of the daemon. */
export function Waiting() {
  const lost = usePick((state) => state.link === 'lost');
  return (
    <main class="sheet">
      <SentenceHead
        what={lost ? 'The tool does not answer' : 'One moment'}
        context={
          lost ? 'Is its window still open? The page tries again by itself.' : 'Asking the tool what is on.'
        }
      >
        <NoticeLine notice={null} />
      </SentenceHead>
      {lost && (
        <>
          <Lessons />
          <FileOpener />
        </>
      )}
    </main>
  );
}
