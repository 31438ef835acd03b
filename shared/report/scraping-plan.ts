import { stationRuns } from '../job/station-runs.ts';
import { linesUnder } from '../job/survey.ts';
import type { Result } from '../sheet/result.ts';
import { amount } from '../words.ts';
import type { History } from './history.ts';
import { html, type Markup } from './html.ts';
import { planDrawing } from './plan-drawing.ts';
import { drawing, drawingWidth, label, line, n } from './svg.ts';
import { dayOf, passesSince, sure } from './words.ts';

type Metal = Result['metal'][string];

/** Whether there is still something to scrape: a surface that is surely within its limits needs no plan. */
export function wantsPlan({ newest }: History): boolean {
  const { verdicts, metal } = newest.result;
  const done = verdicts.length > 0 && verdicts.every(({ verdict }) => verdict === 'within');
  return !done && Object.values(metal).some(({ plan }) => plan.length > 0);
}

/** A sheet to lay on the bench, one for each line or plate, in letters that are read at arm's length. */
export function scrapingPlans({ surface, newest }: History, index: number): Markup {
  const perRound = surface.target?.passesPerRound ?? null;
  const bite = newest.sheet.target?.biteUm ?? 5;
  const stop = newest.sheet.target?.stopPasses ?? 0;
  return html`${Object.entries(newest.result.metal).map(([name, metal], k) => {
    const lines = linesUnder(newest, name);
    const isPlate = newest.sheet.lines[name] === undefined;
    const now = perRound === null ? metal.plan : metal.plan.slice(0, perRound);
    const later = metal.plan.length - now.length;
    return html`<section class="sheet bench whole-page">
<h1>Scrape: ${name === 'plate' ? surface.name : name}</h1>
<p class="context">From the survey ${newest.record.round}, ${dayOf(newest.record.at)}. Target ${metal.target}, ${bite} µm a pass.</p>
${surface.passesSince.length > 0 && html`<p class="bench-words">▲ ${passesSince(surface)} scraped since: measure again before you go on.</p>`}
<figure>${isPlate ? plate(newest.heights, metal, `bench-${index}-${k}`) : strip(lines.flat(), metal, `bench-${index}-${k}`)}
<figcaption>${isPlate ? 'Number and ink: passes at every station.' : 'Blocks and large figures: passes. Below: what is above the target, and how far that is sure, µm.'}</figcaption></figure>
<ol class="passes">${now.map(({ pass, stations }) => html`<li><span class="no">Pass ${pass}</span><span>${stationRuns(stations, lines)}</span><span class="done"></span></li>`)}</ol>
<p class="bench-words">Then measure again.${later > 0 && ` ${later} more pass${later === 1 ? '' : 'es'} foreseen after that.`}${stop > 0 && ` The last ${stop === 1 ? 'pass is' : `${stop} passes are`} left to the blue.`}</p>
${doubtful(metal, lines)}
<p>A suggestion from numbers, not a statement that metal may come off: what is off does not go back on. Look at the blue as well, and stop early.</p>
</section>`;
  })}`;
}

function doubtful({ stations }: Metal, lines: readonly (readonly string[])[]): Markup | false {
  const names = Object.entries(stations)
    .filter(([, { removeUm, worthAStroke }]) => removeUm > 0 && !worthAStroke)
    .map(([name]) => name);
  if (names.length === 0) return false;
  return html`<p class="bench-words">Not worth a stroke: ${stationRuns(names, lines)} (hatched, or without a number: less than its own doubt).</p>`;
}

const left = 20;
const right = drawingWidth - 20;
const base = 210;

/** Passes as blocks that stand on the way, station by station; the highest ground is the tallest stack. */
function strip(order: readonly string[], { stations }: Metal, id: string): Markup {
  const known = order.filter((name) => stations[name]);
  const most = Math.max(1, ...known.map((name) => stations[name]!.passes));
  const block = Math.min(22, 150 / most);
  const wide = Math.min(46, (right - left) / known.length);
  const x = (k: number) => left + ((right - left - wide) * k) / Math.max(1, known.length - 1);
  const big = wide >= 34 ? 'bench-number' : 'small';
  return drawing(id, base + 74, 'Passes at every station', [
    html`${known.map((name, k) => {
      const { passes, removeUm, uUm, worthAStroke } = stations[name]!;
      const fill = worthAStroke ? 'cut' : 'left-out';
      return [
        Array.from(
          { length: passes },
          (_, p) =>
            html`<rect class="${fill}" x="${n(x(k) + 2)}" y="${n(base - (p + 1) * block)}" width="${n(wide - 4)}" height="${n(block - 1.5)}"/>`,
        ),
        label([x(k) + wide / 2, base - passes * block - 8], String(passes), 'middle', `${big} strong`),
        label([x(k) + wide / 2, base + 30], name, 'middle', `${big} strong`),
        label([x(k) + wide / 2, base + 52], removeUm === 0 ? '0' : amount(removeUm, uUm), 'middle'),
        label([x(k) + wide / 2, base + 68], removeUm === 0 ? '' : sure(uUm), 'middle', 'small'),
      ];
    })}`,
    line([left - 10, base], [right + 10, base], 'thick'),
  ]);
}

function plate(heights: History['newest']['heights'], { stations }: Metal, id: string): Markup {
  const most = Math.max(1, ...Object.values(stations).map(({ passes }) => passes));
  return planDrawing({
    id,
    title: 'Passes at every station',
    heights,
    mark: (name) => {
      const found = stations[name];
      return found?.worthAStroke || found?.passes === 0
        ? { ink: found.passes / most, text: String(found.passes) }
        : { ink: 0, text: '' };
    },
  });
}
