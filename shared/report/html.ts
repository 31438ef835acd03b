/** Text as it may stand between tags or in a quoted attribute. */
export function escapeText(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** HTML that is safe to put into other HTML as it is. */
export interface Markup {
  readonly markup: string;
}

type Part = Markup | string | number | false | null | undefined | readonly Part[];

/** A template of HTML: what is put in is escaped unless it is markup itself; lists are joined; false is left out. */
export function html(strings: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return {
    markup: strings.map((text, k) => text + (k < parts.length ? textOf(parts[k]) : '')).join(''),
  };
}

function textOf(part: Part): string {
  if (part === false || part === null || part === undefined) return '';
  if (typeof part === 'string' || typeof part === 'number') return escapeText(unbroken(String(part)));
  return isList(part) ? part.map(textOf).join('') : part.markup;
}

/** A number stays with its unit. */
function unbroken(text: string): string {
  return text.replace(/(\d) (?=(µm|mm|°C|%|×))/g, '$1\u00a0');
}

function isList(part: Markup | readonly Part[]): part is readonly Part[] {
  return Array.isArray(part);
}

/** So few rows stay on one page. */
const WHOLE = 9;

/** So short a text stays on one line in a cell. */
const SHORT = 12;

/** A table with a head row. Short cells are not broken. `loose`: its rows are tall, and it may go on overleaf. */
export function table(head: readonly string[], rows: readonly (readonly Part[])[], className = ''): Markup {
  return html`<table class="${className}${rows.length <= WHOLE && className !== 'loose' && ' whole'}"><thead><tr>${head.map((cell) => html`<th>${cell}</th>`)}</tr></thead>
<tbody>${rows.map((row) => html`<tr>${row.map(cellOf)}</tr>`)}</tbody></table>`;
}

function cellOf(cell: Part): Markup {
  return typeof cell === 'string' && cell.length <= SHORT
    ? html`<td class="short">${cell}</td>`
    : html`<td>${cell}</td>`;
}
