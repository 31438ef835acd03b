import { close } from '../state/actions.ts';
import { usePage } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import { Asking } from './asking.tsx';
import { Control, Row } from './control.tsx';

/** Finish for good, or put aside: asked once, because a finished survey shows its result to everybody. */
export function FinishQuestion({ open }: { open: number }) {
  const page = usePage();
  const left = open === 0 ? '' : ` ${open === 1 ? 'One reading is' : `${open} readings are`} still open.`;
  const finish = async () => {
    if (!(await page.send({ do: 'finish' }))) page.point(nothing);
  };
  return (
    <Asking
      title={`Finish this survey?${left}`}
      testId="finish-question"
      onKey={(key) => {
        if (key.toLowerCase() !== 'f') return false;
        void finish();
        return true;
      }}
    >
      <Row>
        <Control word="Finish" hint="F again" kind="main" testId="finish-yes" onClick={finish} />
        <Control
          word="Put aside"
          hint="go on another day"
          testId="put-aside"
          onClick={() => void page.send({ do: 'leave' })}
        />
        <Control word="Not yet" hint="escape" apart onClick={() => close(page)} />
      </Row>
    </Asking>
  );
}
