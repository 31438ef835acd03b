import { html, type Markup } from './html.ts';

/** To a photograph beside the report, in the folder of the job. */
export function photoLink(file: string): Markup {
  return html`<a href="${file}">${file}</a>`;
}
