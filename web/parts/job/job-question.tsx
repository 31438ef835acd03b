import type { JobQuestion as Asked } from '../../state/page-state.ts';
import type { Desk } from './desk.ts';
import { NextRound } from './next-round.tsx';
import { NoteQuestion } from './note-question.tsx';
import { PassesQuestion } from './passes-question.tsx';
import { PrintQuestion } from './print-question.tsx';
import { SurfaceQuestion } from './surface-question.tsx';
import { TargetQuestion } from './target-question.tsx';

/** The question that stands in the place of the sheet until it is answered or closed with Escape. */
export function JobQuestion({ desk, ask }: { desk: Desk; ask: Asked }) {
  switch (ask) {
    case 'next-round':
      return <NextRound desk={desk} />;
    case 'passes':
      return <PassesQuestion desk={desk} />;
    case 'target':
      return <TargetQuestion desk={desk} />;
    case 'print':
      return <PrintQuestion desk={desk} />;
    case 'surface':
      return <SurfaceQuestion desk={desk} />;
    case 'note':
      return <NoteQuestion desk={desk} />;
  }
}
