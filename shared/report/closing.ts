import type { Job } from '../job/job.ts';
import type { Evidence } from './evidence.ts';
import type { History } from './history.ts';
import { html, type Markup, table } from './html.ts';
import { photoLink } from './photo-link.ts';
import { capital, dayOf } from './words.ts';

/** Notes, proof, cautions, and the place to sign. */
export function closing(job: Job, histories: readonly History[], evidence: Evidence): Markup {
  return html`<section class="sheet">
${notes(job, histories)}
<h2>What this rests on, and how to prove it</h2>
<p>Every line of a recording carries a link that is computed from the line before it. The last link and the digest below belong to one file only: keep this page, and whoever has the files can prove that they are the ones it was made from. On a computer with the program: <code>wayscribe verify</code> and the folder of the job. Without it: <code>sha256sum</code> and the file.</p>
<p>job.json: ${evidence.changes} changes, last link <code>${evidence.jobLink}</code>.</p>
${table(
  ['File', 'Last link', 'SHA-256'],
  evidence.files.map(({ file, sha256, link }) => [
    file,
    html`<code>${link ?? 'a sheet has none'}</code>`,
    html`<code>${sha256.slice(0, 32)}<br>${sha256.slice(32)}</code>`,
  ]),
  'proof',
)}
<div class="together"><h2>Cautions</h2>
<ul class="cautions">${cautions.map((text) => html`<li>${text}</li>`)}</ul>
<h2>Signed</h2>
<div class="sign">${['Measured by', 'Scraped by', 'Seen and accepted by'].map(
    (who) => html`<div><span class="rule"></span>${who}<br><small>name, day, signature</small></div>`,
  )}</div></div>
</section>`;
}

function notes(job: Job, histories: readonly History[]): Markup {
  const ofJob = job.notes.map(({ at, by, text }) => `${dayOf(at)}, ${by}: ${text}`);
  const ofSurveys = histories.flatMap(({ surface, surveys }) =>
    byText(
      surveys.flatMap(({ record, session, result, notMeasured }) => [
        ...(session?.notes ?? []).map(({ text }) => ({ text, round: record.round })),
        ...result.notes.map((text) => ({ text, round: record.round })),
        ...notMeasured.map(({ figure }) => ({
          text: `▲ ${figure} has a limit and was not measured.`,
          round: record.round,
        })),
      ]),
    ).map(({ text, rounds }) => {
      const when = rounds.length === surveys.length && rounds.length > 1 ? 'every round' : rounds.join(', ');
      return `${capital(surface.name)}, ${when}: ${text}`;
    }),
  );
  const photos = job.photos.map(({ file, words }) => html`Photo ${photoLink(file)}: ${words}`);
  const withdrawn = job.changes.flatMap((change) =>
    change.change === 'withdrawn'
      ? [`Change ${change.of} was withdrawn on ${dayOf(change.at)} by ${change.by}: ${change.reason}`]
      : [],
  );
  const all = [...ofJob, ...ofSurveys, ...photos, ...withdrawn];
  if (all.length === 0) return html``;
  return html`<h2>Notes</h2><ul>${all.map((text) => html`<li>${text}</li>`)}</ul>`;
}

/** What is said of several rounds is said once. */
function byText(notes: readonly { text: string; round: string }[]): { text: string; rounds: string[] }[] {
  const found = new Map<string, string[]>();
  for (const { text, round } of notes) found.set(text, [...(found.get(text) ?? []), round]);
  return [...found].map(([text, rounds]) => ({ text, rounds }));
}

const cautions = [
  'A result of measurement is not a statement that a machine is safe to run or that metal may come off. Local rules and qualified people decide.',
  'The figures hold for the supports, temperatures and carriage position that are noted here. On its own feet, bolted down or warm, the iron is another shape.',
  'Lifting, tipping and turning castings: known weight, rated gear, nobody under or before the load. Jacks, wedges and clamps hold sprung iron: loosen little by little.',
  'Scraped edges and scrapers cut. Old marking paste and old paint may hold lead; solvents need air and no flame.',
  'Turn spindles by hand with the power locked out while an indicator stands on them.',
];
