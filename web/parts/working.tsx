import { handColumns } from '../../shared/figures/hand-columns.ts';
import type { Session } from '../../shared/session/fold.ts';
import { facingOf, placementKey, type WalkId, walkPlacements } from '../../shared/survey/way.ts';
import { toInternal } from '../../shared/units.ts';
import { decimalsFor } from '../../shared/words.ts';
import { type SurveyResult, surveyResult } from '../state/survey-result.ts';
import { lengthText } from '../words/length.ts';
import { signed } from '../words/signed.ts';

/** The arithmetic as it would be done on paper, walk by walk, and beside it what all readings together say. */
export function Working({ session }: { session: Session }) {
  const survey = surveyResult(session, 'ends');
  return (
    <section class="working" data-testid="working" aria-label="The working">
      <p class="soft">
        Reading × foot spacing is the rise of one step. The rises are summed; the line through both ends is
        taken off the sum, and with it the zero of the level. Plus stands proud. The last column puts all
        walks together.
      </p>
      <div class="walks">
        {session.walks.map((walk) => (
          <WalkTable key={walk} session={session} walk={walk} survey={survey} />
        ))}
      </div>
      {survey && (
        <ul class="soft">
          {survey.result.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function WalkTable({
  session,
  walk,
  survey,
}: {
  session: Session;
  walk: WalkId;
  survey: SurveyResult | null;
}) {
  const { setup } = session;
  const { unit, graduation } = setup.level;
  const facing = facingOf(setup, walk);
  const along = walk === 'out' ? walkPlacements(setup, walk) : walkPlacements(setup, walk).reverse();
  const steps = along.map((place) => {
    const take = session.counted.get(placementKey(place));
    const readingUmPerM = take ? toInternal('tilt', take.value * graduation, unit) : null;
    return { from: place.from, to: place.to, readingUmPerM, baseMm: setup.baseMm };
  });
  const { rows, complete } = handColumns(steps, facing);
  const together = new Map(survey?.stations.map((station) => [station.name, station]));
  const largestU = Math.max(0.05, ...(survey?.stations.map(({ uUm }) => uUm) ?? []));
  const decimals = Math.max(1, decimalsFor(largestU));
  return (
    <table>
      <caption>
        {walk === 'out' ? 'Going out' : 'Coming back'}
        {facing === -1 && ', plus end to the start: readings count the other way'}
        {complete || rows.length === 0
          ? ''
          : `, as far as ${rows.at(-1)?.to}: what lies beyond hangs on a step not read`}
      </caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">Reading µm/m</th>
          <th scope="col">× {lengthText(setup.baseMm, 'mm')} mm = rise µm</th>
          <th scope="col">Sum µm</th>
          <th scope="col">End line µm</th>
          <th scope="col">Height µm</th>
          <th scope="col">All walks µm</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => {
          const all = together.get(row.to);
          return (
            <tr key={row.to}>
              <th scope="row">{`${row.from}–${row.to}`}</th>
              <td>{signed(row.readingUmPerM, 1)}</td>
              <td>{signed(row.riseUm, 2)}</td>
              <td>{signed(row.sumUm, 2)}</td>
              <td>{signed(row.endLineUm, 2)}</td>
              <td>{signed(row.heightUm, decimals)}</td>
              <td>{all ? `${signed(all.heightUm, decimals)} ± ${(2 * all.uUm).toFixed(decimals)}` : ''}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
