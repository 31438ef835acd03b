import { SentenceHead } from '../parts/sentence-head.tsx';
import { Control, Row } from '../parts/control.tsx';
import { usePage, usePick } from '../state/page.ts';
import { demoSetup } from '../state/setup-form.ts';

export function StartView() {
  const page = usePage();
  const demo = usePick((state) => state.mode === 'demo');
  return (
    <main class="sheet">
      <SentenceHead what="Nothing is being measured" context="" />
      <Row>
        {demo && (
          <Control word="Walk the demo bed" kind="main" testId="demo" onClick={() => void page.send({ do: 'start', setup: demoSetup })} />
        )}
      </Row>
    </main>
  );
}
