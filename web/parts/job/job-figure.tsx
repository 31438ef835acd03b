import { figureWords, type History } from '../../../shared/report/history.ts';
import { capital, sized, sure } from '../../../shared/report/words.ts';
import { mainFigure, verdictText } from '../../words/job.ts';
import { say } from '../../words/say.ts';

/** The figure that the surface is about, as large as a live reading, and how it stands to its limit. */
export function JobFigure({ history }: { history: History }) {
  const figure = mainFigure(history);
  if (!figure) return null;
  const digits = sized(figure);
  return (
    <section class="live" aria-label={capital(figureWords(figure.name))}>
      <div
        class={`digits ${digits.length > 5 ? 'long' : ''}`}
        data-testid="job-figure"
        data-value-um={figure.value}
        data-verdict={figure.verdict?.verdict}
      >
        {digits}
      </div>
      <div class="metal">{say('{unit}, sure to {u}', { unit: figure.unit, u: sure(figure.u) })}</div>
      <div class="against" data-testid="job-verdict">
        {verdictText(figure)}
      </div>
    </section>
  );
}
