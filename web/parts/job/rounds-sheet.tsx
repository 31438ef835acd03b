import { convergenceOf } from '../../../shared/job/convergence.ts';
import { figureOf, figureWords, type History } from '../../../shared/report/history.ts';
import { capital, sized, sure, verdictSentences } from '../../../shared/report/words.ts';
import { ConvergenceChart } from '../../drawing/job/convergence-chart.tsx';
import { useSize } from '../../drawing/use-size.ts';
import { dayText, type MainFigure, mainFigure } from '../../words/job.ts';
import { say } from '../../words/say.ts';
import type { Desk } from './desk.ts';

/** Round by round: how far the figure has come down to its limit, and how many rounds are left. */
export function RoundsSheet({ desk }: { desk: Desk }) {
  const { ref, widthPx, heightPx } = useSize<HTMLDivElement>();
  const { history, surface } = desk;
  if (!surface) return <p>{say('Add the first surface, or bring a recording in under Papers.')}</p>;
  const figure = history && mainFigure(history);
  if (!history || !figure) {
    return (
      <p>
        {say('Nothing was measured yet. Begin with a survey as found: it is the template of all later ones.')}
      </p>
    );
  }
  const rounds = history.surveys.flatMap(({ record, result }) => {
    const found = figureOf(result, figure.name);
    return found ? [{ name: record.round, figure: found }] : [];
  });
  const title = capital(figureWords(figure.name));
  return (
    <section class="two-columns" aria-label={say('Rounds')}>
      <div class="column-of">
        <p class="caption-line">
          {say('{figure}, {unit}, round by round. Bars: sure to.', { figure: title, unit: figure.unit })}
        </p>
        <div class="drawing chart-room" ref={ref}>
          {heightPx > 0 && (
            <ConvergenceChart
              rounds={rounds}
              limit={figure.limit}
              unit={figure.unit}
              widthPx={widthPx}
              heightPx={heightPx}
              label={title}
            />
          )}
        </div>
        <p class="large-words" data-testid="convergence">
          {figure.limit === null
            ? say('No limit is agreed: nothing says when to stop.')
            : convergenceOf(
                rounds.map((round) => round.figure),
                figure.limit,
              ).words}
        </p>
      </div>
      <div class="column-of">
        <RoundsTable history={history} figure={figure} />
        <Limits history={history} />
      </div>
    </section>
  );
}

function RoundsTable({ history, figure }: { history: History; figure: MainFigure }) {
  const { surveys, bites } = history;
  return (
    <table class="job-table" data-testid="rounds">
      <thead>
        <tr>
          <th scope="col">{say('Round')}</th>
          <th scope="col">{say('Day')}</th>
          <th scope="col">{figure.unit}</th>
          <th scope="col">{say('Sure to')}</th>
          <th scope="col">{say('Passes before')}</th>
          <th scope="col">{say('Bite, µm')}</th>
        </tr>
      </thead>
      <tbody>
        {surveys.map(({ record, result }, k) => {
          const found = figureOf(result, figure.name);
          const bite = k > 0 ? bites[k - 1] : null;
          const passes = history.passes[k]!.length;
          return (
            <tr key={record.no}>
              <th scope="row">{record.round}</th>
              <td class="minor">{dayText(record.at)}</td>
              <td>
                <b>{found ? sized(found) : '–'}</b>
              </td>
              <td>{found ? sure(found.u) : ''}</td>
              <td>{k === 0 ? '' : passes === 0 ? say('none') : passes}</td>
              <td>
                {bite
                  ? say('{bite}, sure to {u}', {
                      bite: sized({ value: bite.biteUm, u: bite.uUm }),
                      u: sure(bite.uUm),
                    })
                  : ''}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** What was agreed, with its source, and how the newest survey stands to it: with the reason where it cannot be told. */
function Limits({ history: { surface, newest } }: { history: History }) {
  return (
    <div class="limits" data-testid="limits">
      {surface.limits.map(({ figure, max, source }) => (
        <p key={figure}>
          {say('{figure}: at most {max} {unit}. {source}.', {
            figure: capital(figureWords(figure)),
            max,
            unit: figureOf(newest.result, figure)?.unit ?? '',
            source: capital(source),
          })}
        </p>
      ))}
      {verdictSentences(newest).map((sentence) => (
        <p key={sentence}>
          <b>{sentence}</b>
        </p>
      ))}
      {newest.notMeasured.map(({ figure }) => (
        <p key={figure} class="wrong">
          {say('{figure} has a limit and was not measured.', { figure: capital(figureWords(figure)) })}
        </p>
      ))}
    </div>
  );
}
