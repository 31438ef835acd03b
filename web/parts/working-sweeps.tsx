import type { Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey } from '../../shared/survey/plan.ts';
import { decimalsFor, referenceWord } from '../../shared/words.ts';
import { stationsAlong } from '../state/on-plan.ts';
import type { Reference } from '../state/page-state.ts';
import { sweepColumns } from '../state/sweep-columns.ts';
import { kindWords, lineTitle } from '../words/kinds.ts';
import { asWritten } from '../words/quantity.ts';
import { say } from '../words/say.ts';
import { signed, signedSize } from '../words/signed.ts';
import { HeightTap, litStyle, ReadingTap, type Shown } from './working-cells.tsx';

/** How the columns of the sweeps come about. */
export function sweepWords({ setup }: Session): string {
  if (setup.kind === 'dovetail') {
    return 'Every size less the mean of all sizes. Plus is bigger. The last column is sure to 95 %.';
  }
  const off =
    setup.kind === 'straightedge'
      ? 'the line through its own ends, because a straightedge is laid by eye'
      : 'its own mean, because how an indicator is set up says nothing of the metal';
  const turned = kindWords[setup.kind].turn
    ? ' Half the sum of both positions is the metal, half their difference is the own error of what was turned.'
    : '';
  const sag = setup.kind === 'bar' && setup.sagUm > 0 ? ' The sag of the bar is put back first.' : '';
  return `Off every sweep is taken ${off}.${sag}${turned} Plus stands proud. The last column puts all readings together.`;
}

/** The sweeps over one line side by side, their mean, and what was turned over by itself. */
export function SweepTable(props: Shown & { line: string }) {
  const { session, survey, reference, lit, lights, weights, line } = props;
  const { columns, meanUm, artefactUm, sagUm } = sweepColumns(session, line);
  const head = asWritten().head();
  const found = survey?.lines.find(({ name }) => name === line);
  const together = new Map(found?.stations.map((station) => [station.name, station]));
  const largestU = Math.max(0.05, ...(found?.stations.map(({ uUm }) => uUm) ?? []));
  const decimals = Math.max(1, decimalsFor(largestU / asWritten().one()));
  const cell = (value: number | undefined, digits = 1) =>
    value === undefined ? '' : signedSize(value, digits);
  const read = stationsAlong(session, line).filter(({ name }) =>
    columns.some(({ readUm }) => readUm.has(name)),
  );
  const size = session.setup.kind === 'dovetail';
  return (
    <table>
      <caption>{lineTitle(session.setup, line)}</caption>
      <thead>
        <tr>
          <th scope="col">Station</th>
          {sagUm && <th scope="col">{`Sag ${head}`}</th>}
          {columns.map(({ run }) => (
            <th key={run.id} scope="col" colSpan={weights ? 3 : 2}>
              {sweepHead(size, weights !== null, shortTitle(run.id, line))}
            </th>
          ))}
          {columns.length > 1 && <th scope="col">{`Mean ${head}`}</th>}
          {artefactUm && <th scope="col">{`Own error of the ${session.setup.kind} ${head}`}</th>}
          <th scope="col">
            {together.size > 0 ? allReadings(session, reference) : say('All readings {unit}', { unit: head })}
          </th>
        </tr>
      </thead>
      <tbody>
        {read.map(({ name }) => {
          const all = together.get(name);
          return (
            <tr key={name}>
              <th scope="row">{name}</th>
              {sagUm && <td>{cell(sagUm.get(name), decimals)}</td>}
              {columns.flatMap(({ run, readUm, heightUm }) => {
                const place: Placement = { run: run.id, at: [name] };
                const key = placementKey(place);
                const light = litStyle(lights.get(key));
                return [
                  <td key={`${run.id} read`} {...light}>
                    {readUm.has(name) && (
                      <ReadingTap lit={lit} place={place}>
                        {cell(readUm.get(name))}
                      </ReadingTap>
                    )}
                  </td>,
                  <td key={`${run.id} less`} {...light}>
                    {cell(heightUm.get(name))}
                  </td>,
                  weights && (
                    <td key={`${run.id} counts`} {...light}>
                      {signed(weights.get(key) ?? 0, 3)}
                    </td>
                  ),
                ];
              })}
              {columns.length > 1 && <td>{cell(meanUm.get(name), decimals)}</td>}
              {artefactUm && <td>{cell(artefactUm.get(name), decimals)}</td>}
              <td class="all">
                {all && (
                  <HeightTap
                    lit={lit}
                    is={{ is: 'height', line, station: name }}
                    heightUm={all.heightUm}
                    uUm={all.uUm}
                    decimals={decimals}
                  />
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Title of the last column: what its heights stand over. */
function allReadings({ setup }: Session, reference: Reference): string {
  const unit = asWritten().head();
  if (setup.kind === 'dovetail' || setup.kind === 'collars')
    return say('All readings, over the mean size {unit}', { unit });
  if (setup.kind === 'repeat') return say('All readings, over their mean {unit}', { unit });
  return kindWords[setup.kind].overMotion
    ? say('All readings, over the motion {unit}', { unit })
    : say('All readings, over {reference} {unit}', { reference: referenceWord(reference), unit });
}

function sweepHead(size: boolean, counts: boolean, run: string): string {
  const unit = asWritten().head();
  if (size) {
    return counts
      ? say('Size, less the mean {unit}, what it counts', { unit })
      : say('Size, and less the mean {unit}', { unit });
  }
  return counts
    ? say('{run}: read, less set-up {unit}, what it counts', { run, unit })
    : say('{run}: read, less set-up {unit}', { run, unit });
}

/** "as it stands" of "top as it stands": the table is of the top already. */
function shortTitle(id: string, line: string): string {
  const short = id.startsWith(`${line} `) ? id.slice(line.length + 1) : id;
  return short.charAt(0).toUpperCase() + short.slice(1);
}
