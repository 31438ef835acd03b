import { type ShownFigure, sureOf } from '../words/figures.ts';
import { asWritten } from '../words/quantity.ts';

interface FigureProps {
  readonly figure: ShownFigure;
  readonly reference: string;
  /** Whether it has to be told apart from others. */
  readonly several: boolean;
}

/** The main figure, as large as the live reading was, with its uncertainty and what it is against. */
export function Figure({ figure, reference, several }: FigureProps) {
  const { title, value, u, says } = figure;
  const { digits, unit } = asWritten().parts(value, u, figure.unit);
  return (
    <section class="live" aria-label={title}>
      <div
        class={`digits ${digits.length > 5 ? 'long' : ''}`}
        data-testid="figure"
        data-figure={figure.name}
        data-value-um={value}
        data-u-um={u}
        data-reference={reference}
      >
        {digits}
      </div>
      <div class="metal">{`${unit}, ${sureOf(figure)}`}</div>
      <div class="against">{[several && title, says].filter(Boolean).join(': ')}</div>
    </section>
  );
}

/** All figures of a survey that has several, in a row. */
export function Figures({ figures }: { figures: readonly ShownFigure[] }) {
  if (figures.length < 2) return null;
  return (
    <dl class="figures" data-testid="figures">
      {figures.map((figure) => (
        <div key={figure.name} data-figure={figure.name} data-value={figure.value} data-u={figure.u}>
          <dt>{figure.title}</dt>
          <dd>
            <b>{asWritten().size(figure.value, figure.u, figure.unit)}</b>
            {`, ${sureOf(figure)}`}
          </dd>
          <dd>{figure.says}</dd>
        </div>
      ))}
    </dl>
  );
}
