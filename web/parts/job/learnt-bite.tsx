import { sized, sure } from '../../../shared/report/words.ts';
import { say } from '../../words/say.ts';
import type { Desk } from './desk.ts';

/** What a pass has really taken off, offered where the plan reckons with something else. */
export function LearntBite({ desk }: { desk: Desk }) {
  const { history, surface, write } = desk;
  const bite = history?.bites.findLast((each) => each !== null);
  if (!history || !surface || !bite) return null;
  const planned = history.newest.sheet.target?.biteUm ?? 5;
  const learnt = Number(bite.biteUm.toFixed(1));
  const values = { bite: sized({ value: bite.biteUm, u: bite.uUm }), u: sure(bite.uUm), planned };
  const same = Math.abs(learnt - planned) < 0.05 || learnt <= 0;
  return (
    <div class="learnt" data-testid="learnt-bite">
      <p>
        {same
          ? say('A pass really took off {bite} µm, sure to {u}; the plan reckons with that.', values)
          : say('A pass really took off {bite} µm, sure to {u}; the plan reckons with {planned} µm.', values)}
      </p>
      {!same && (
        <button
          type="button"
          class="small screen-only"
          data-testid="use-bite"
          onClick={() => {
            const target = surface.target ?? history.newest.sheet.target;
            void write({
              change: 'target',
              surface: surface.name,
              target: { ...target, shape: target?.shape ?? 'flat', biteUm: learnt },
            });
          }}
        >
          {say('Reckon with {learnt} µm', { learnt })}
        </button>
      )}
    </div>
  );
}
