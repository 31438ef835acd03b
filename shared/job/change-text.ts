import { figureWords } from '../report/history.ts';
import type { JobChange } from './document.ts';

/** What a change says, in a few words: "survey of front way, in work 2 (front-way-in-work-2.jsonl)". */
export function changeText(change: JobChange): string {
  switch (change.change) {
    case 'surface':
      return change.madeFrom.length === 0
        ? `surface ${change.surface}`
        : `surface ${change.surface}, made from ${change.madeFrom.join(' and ')}`;
    case 'limits':
      return `limits of ${change.surface}: ${change.limits.map(({ figure, max }) => `${figureWords(figure)} ${max}`).join(', ') || 'none'}`;
    case 'target':
      return `target of ${change.surface}: ${change.target.shape}, ${change.target.biteUm} µm a pass`;
    case 'survey':
      return `survey of ${change.surface}, ${change.round} (${change.file})`;
    case 'passes':
      return change.passes.length === 1
        ? `1 pass on ${change.surface}`
        : `${change.passes.length} passes on ${change.surface}`;
    case 'checked':
      return `${change.surface} checked: ${change.why}`;
    case 'photo':
      return `photo ${change.file}: ${change.words}`;
    case 'print':
      return `print of ${change.surface} against ${change.against}`;
    case 'note':
      return `note: ${change.text}`;
    case 'withdrawn':
      return `${change.of} withdrawn: ${change.reason}`;
  }
}
