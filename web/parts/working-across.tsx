import { type Placement, placementKey, type TiltRun } from '../../shared/survey/plan.ts';
import { decimalsFor } from '../../shared/words.ts';
import { bedHeights } from '../drawing/bed/bed-heights.ts';
import { spanText } from '../words/length.ts';
import { asWritten } from '../words/quantity.ts';
import { say } from '../words/say.ts';
import { runTitle } from '../words/sentence.ts';
import { signed, signedSize } from '../words/signed.ts';
import { HeightTap, litStyle, ReadingTap, type Shown, stepsOf } from './working-cells.tsx';

/**
 * Readings across a bed are not summed: each tells how far the rear way stands over the front one, against the first
 * of them, because the zero of the level is in all.
 */
export function AcrossTable({ session, lit, lights, weights, run }: Shown & { run: TiltRun }) {
  const steps = stepsOf(session, run).filter(({ readingUmPerM }) => readingUmPerM !== null);
  const readingOf = (step: (typeof steps)[number] | undefined) => run.facing * (step?.readingUmPerM ?? 0);
  const { leans, corners } = bedHeights(session, 'ends');
  const [first] = leans;
  const gaugeM = (steps[0]?.baseMm ?? 0) / 1000;
  const writing = asWritten();
  const unit = writing.head();
  const largestU = Math.max(0.05, ...leans.map(({ uUmPerM }) => uUmPerM * gaugeM));
  const decimals = Math.max(1, decimalsFor(largestU / writing.one()));
  return (
    <table data-testid="working-across">
      <caption>{runTitle(session, run)}</caption>
      <thead>
        <tr>
          <th scope="col">Across</th>
          <th scope="col">{say('Reading {unit}', { unit: writing.head('µm/m') })}</th>
          <th scope="col">{say('Less the first {unit}', { unit: writing.head('µm/m') })}</th>
          <th scope="col">
            {say('× {base} = rear over front {unit}', {
              base: spanText(steps[0]?.baseMm ?? 0, writing.lengthUnit),
              unit,
            })}
          </th>
          <th scope="col">{say('All readings {unit}', { unit })}</th>
          {weights && <th scope="col">{say('Counts µm per µm/m')}</th>}
        </tr>
      </thead>
      <tbody>
        {steps.map((step) => {
          const { from, to } = step;
          const place: Placement = { run: run.id, at: [from, to] };
          const less = readingOf(step) - readingOf(steps[0]);
          // While nothing ties the ways, the readings across are all there is: nothing else makes the height.
          const all = corners && leans.find((lean) => lean.from === from && lean.to === to);
          return (
            <tr key={from} {...litStyle(lights.get(placementKey(place)))}>
              <th scope="row">
                <ReadingTap lit={lit} place={place}>{`${from}–${to}`}</ReadingTap>
              </th>
              <td>{signedSize(readingOf(step), 1, 'µm/m')}</td>
              <td>{signedSize(less, 1, 'µm/m')}</td>
              <td>{signedSize(less * gaugeM, 2)}</td>
              <td class="all">
                {all && first && (
                  <HeightTap
                    lit={lit}
                    is={{ is: 'across', pair: [from, to], against: [first.from, first.to] }}
                    heightUm={all.slopeUmPerM * gaugeM}
                    uUm={all.uUmPerM * gaugeM}
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
