import { usePage } from '../state/page.ts';
import { unitWord } from '../words/live.ts';
import { Asking } from './asking.tsx';
import { Control, Row } from './control.tsx';

/** A changed unit stops everything else, because every number after it would mean something else. */
export function UnitAlarm({ unit, expected }: { unit: string; expected: string }) {
  const page = usePage();
  return (
    <Asking
      title={`The level now shows ${unitWord(unit)}; this survey is in ${unitWord(expected)}.`}
      alarms
      testId="unit-alarm"
    >
      <p>Nothing is taken until you have seen this. From then on its readings are converted.</p>
      <Row>
        <Control
          word="I have seen it"
          kind="main"
          testId="acknowledge-unit"
          onClick={() => void page.send({ do: 'acknowledge-unit' })}
        />
      </Row>
    </Asking>
  );
}
