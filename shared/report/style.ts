/** The look of a shop drawing on paper: one ink, line kinds instead of colours, so that it holds in black and white. */
const sheetStyle = `
:root { --ground: #ecefe9; --paper: #fff; --ink: #17232e; --soft: #55616a; --faint: #b4bdc1; }
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 10pt/1.4 B612, "DejaVu Sans", Verdana, sans-serif; font-variant-numeric: tabular-nums; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
main { max-width: 200mm; margin: 0 auto; padding: 6mm; }
.sheet { background: var(--paper); border: 0.5mm solid var(--ink); padding: 7mm; margin-bottom: 8mm; }
h1 { font-size: 21pt; line-height: 1.15; margin: 0 0 2mm; }
h2 { font-size: 13.5pt; margin: 5mm 0 1.5mm; break-after: avoid; }
h3 { font-size: 10.5pt; margin: 4mm 0 1mm; break-after: avoid; }
.sheet > h2:first-child { margin-top: 0; font-size: 16pt; }
p { margin: 0 0 2mm; orphans: 3; widows: 3; }
.surface > .plain { break-inside: avoid; break-after: avoid; }
figure + table { margin-top: 0; }
h3 + p { break-after: avoid; }
.together { break-inside: avoid; }
.context, small { color: var(--soft); }
small { font-size: 8pt; }
.plain { font-size: 11.5pt; }
figure { margin: 2mm 0; break-inside: avoid; }
figcaption { font-size: 9pt; margin: 1mm 0 0; }
table { width: 100%; border-collapse: collapse; margin: 1mm 0 3mm; font-size: 8.5pt; line-height: 1.3; }
th { text-align: left; font-weight: 700; border-bottom: 0.5mm solid var(--ink); vertical-align: bottom; }
td { border-bottom: 0.15mm solid var(--faint); vertical-align: top; }
th, td { padding: 0.8mm 3mm 0.8mm 0; overflow-wrap: break-word; }
.short { white-space: nowrap; }
tr, .whole { break-inside: avoid; }
thead { break-after: avoid; }
.dense td, .dense th { padding: 0.35mm 2mm 0.35mm 0; font-size: 8pt; }
.two-columns { columns: 2; column-gap: 9mm; }
.two-columns table { margin-top: 0; }
a { color: inherit; }
code { font: 8pt/1.3 "DejaVu Sans Mono", monospace; overflow-wrap: anywhere; }
ul, ol { margin: 1mm 0 2mm; padding-left: 5mm; }
.cautions { font-size: 8.5pt; }
.title-block { display: grid; grid-template-columns: repeat(4, 1fr); margin: 6mm 0 0 auto; border: 0.5mm solid var(--ink); break-inside: avoid; font-size: 8.5pt; }
.title-block div { border: 0.15mm solid var(--ink); padding: 1mm 1.5mm; overflow-wrap: anywhere; }
.title-block .wide { grid-column: span 2; }
.title-block small { display: block; font-size: 7pt; }
.sign { display: grid; grid-template-columns: repeat(3, 1fr); gap: 6mm; break-inside: avoid; }
.sign .rule { display: block; height: 14mm; border-bottom: 0.4mm solid var(--ink); margin-bottom: 1mm; }
.bench .passes { font-size: 26pt; line-height: 1.4; font-weight: 700; padding: 0; margin: 4mm 0; list-style: none; }
.bench .passes li { display: flex; gap: 6mm; align-items: baseline; border-bottom: 0.15mm solid var(--faint); break-inside: avoid; }
.bench .passes .done { flex: none; margin: 0 1mm 0 auto; width: 8mm; height: 8mm; border: 0.5mm solid var(--ink); align-self: center; }
.bench .passes .no { flex: none; width: 34mm; font-weight: 400; }
.bench .bench-words { font-size: 14pt; line-height: 1.35; }
svg.drawing { display: block; width: 100%; height: auto; }
svg text { font-size: 12.5px; fill: var(--ink); stroke: none; }
svg text.small { font-size: 11px; }
svg text.strong { font-weight: 700; }
svg text.bench-number { font-size: 21px; }
svg line, svg polyline, svg rect, svg circle { fill: none; stroke: var(--ink); stroke-width: 1; }
svg .thick, svg .outline { stroke-width: 2; }
svg .thin { stroke-width: 0.7; }
svg .faint { stroke: var(--faint); stroke-width: 0.7; }
svg .hatch { stroke-width: 0.7; }
svg .chain { stroke-dasharray: 14 3 2 3; stroke-width: 1; }
svg .heavy { stroke-width: 1.6; }
svg .arrows { marker-start: url(#arrow); marker-end: url(#arrow); }
svg marker path { fill: var(--ink); stroke: none; }
svg rect.cut { fill: url(#cut); stroke-width: 1.6; }
svg rect.left-out { fill: url(#left-out); stroke-width: 0.7; stroke-dasharray: 3 2; }
svg rect.ink { fill: var(--ink); stroke-width: 1; }
svg .band { fill: #8d979d; fill-opacity: 0.35; stroke: none; }
svg .curve { stroke-width: 2.2; }
svg .curve.before { stroke-width: 1.4; stroke-dasharray: 7 4; }
svg circle.before { fill: #fff; stroke-width: 1.2; }
svg circle.after { fill: var(--ink); }
@media screen { .sheet { overflow-x: auto; } }
@media print {
  body { background: none; }
  main { max-width: none; margin: 0; padding: 0; }
  .sheet { border: 0; padding: 0; margin: 0 0 9mm; }
  .whole-page { break-before: page; break-after: page; }
}
`;

/**
 * With the part and the number of the page in the margins of every sheet of paper, each of which may be the only one
 * that somebody has in his hands.
 */
export function reportStyle(part: string): string {
  return `${sheetStyle}
@page {
  margin: 15mm 12mm 16mm;
  @bottom-left { content: "${quoted(part)}"; font: 8pt B612, sans-serif; color: #55616a; }
  @bottom-center { content: "Report of measurement"; font: 8pt B612, sans-serif; color: #55616a; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt B612, sans-serif; color: #55616a; }
}
`;
}

/** A text as it may stand in a string of a style sheet that itself stands in HTML: all but plain letters is escaped. */
function quoted(text: string): string {
  return text.replace(/[^A-Za-z0-9 .,-]/gu, (letter) => `\\${letter.codePointAt(0)!.toString(16)} `);
}
