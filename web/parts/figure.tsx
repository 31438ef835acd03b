import type { Reference } from '../state/page-state.ts';
import type { SurveyResult } from '../state/survey-result.ts';
import { figureWords } from '../words/result-sentence.ts';

/** The straightness, as large as the live reading was, with its uncertainty and its reference. */
export function Figure({ survey, reference }: { survey: SurveyResult; reference: Reference }) {
  const { digits, unit, against } = figureWords(survey, reference);
  const { valueUm, uUm } = survey.line.straightness[reference];
  return (
    <section class="live" aria-label="Straightness">
      <div
        class={`digits ${digits.length > 5 ? 'long' : ''}`}
        data-testid="figure"
        data-value-um={valueUm}
        data-u-um={uUm}
        data-reference={reference}
      >
        {digits}
      </div>
      <div class="metal">{unit}</div>
      <div class="against">{against}</div>
    </section>
  );
}
