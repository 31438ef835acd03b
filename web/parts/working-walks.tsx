import { handColumns } from '../../shared/figures/hand-columns.ts';
import { type Placement, placementKey, type TiltRun } from '../../shared/survey/plan.ts';
import { decimalsFor, referenceWord } from '../../shared/words.ts';
import { spanText } from '../words/length.ts';
import { asWritten } from '../words/quantity.ts';
import { say } from '../words/say.ts';
import { runTitle } from '../words/sentence.ts';
import { signed, signedSize } from '../words/signed.ts';
import { HeightTap, litStyle, ReadingTap, type Shown, stepsOf } from './working-cells.tsx';

/** A walk summed step by step, as on paper. */
export function WalkTable(props: Shown & { run: TiltRun }) {
  const { session, survey, reference, lit, lights, weights, run } = props;
  const steps = stepsOf(session, run);
  const { rows, complete } = handColumns(steps, run.facing);
  const line = survey?.lines.find(({ name }) => name === run.line);
  const together = new Map(line?.stations.map((station) => [station.name, station]));
  const largestU = Math.max(0.05, ...(line?.stations.map(({ uUm }) => uUm) ?? []));
  const writing = asWritten();
  const head = writing.head();
  const decimals = Math.max(1, decimalsFor(largestU / writing.one()));
  return (
    <table>
      <caption>
        {runTitle(session, run)}
        {run.facing === -1 && ', plus end to the start: readings count the other way'}
        {complete
          ? ''
          : `, as far as ${rows.at(-1)?.to ?? steps[0]?.from}: what lies beyond hangs on a step not read`}
      </caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">{say('Reading {unit}', { unit: writing.head('µm/m') })}</th>
          <th scope="col">
            {say('× {base} = rise {unit}', {
              base: spanText(steps[0]?.baseMm ?? 0, writing.lengthUnit),
              unit: head,
            })}
          </th>
          <th scope="col">{say('Sum {unit}', { unit: head })}</th>
          <th scope="col">{say('End line {unit}', { unit: head })}</th>
          <th scope="col">{say('Height over end line {unit}', { unit: head })}</th>
          <th scope="col" data-testid="over">
            {say('All walks, over {reference} {unit}', { reference: referenceWord(reference), unit: head })}
          </th>
          {weights && <th scope="col">{say('Counts µm per µm/m')}</th>}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => {
          const all = together.get(row.to);
          const place: Placement = { run: run.id, at: [row.from, row.to] };
          return (
            <tr key={row.to} {...litStyle(lights.get(placementKey(place)))}>
              <th scope="row">
                <ReadingTap lit={lit} place={place}>{`${row.from}–${row.to}`}</ReadingTap>
              </th>
              <td>{signedSize(row.readingUmPerM, 1, 'µm/m')}</td>
              <td>{signedSize(row.riseUm, 2)}</td>
              <td>{signedSize(row.sumUm, 2)}</td>
              <td>{signedSize(row.endLineUm, 2)}</td>
              <td>{signedSize(row.heightUm, decimals)}</td>
              <td class="all">
                {all && (
                  <HeightTap
                    lit={lit}
                    is={{ is: 'height', line: run.line, station: row.to }}
                    heightUm={all.heightUm}
                    uUm={all.uUm}
                    decimals={decimals}
                  />
                )}
              </td>
              {weights && <td>{signed(weights.get(placementKey(place)) ?? 0, 4)}</td>}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
