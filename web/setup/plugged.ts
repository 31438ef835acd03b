import { useCallback, useEffect, useState } from 'preact/hooks';
import type { InstrumentList, PortList } from '../../shared/api.ts';
import type { ProvedInstrument } from '../../shared/proving/instruments.ts';
import { askInstruments, askPorts } from '../state/api.ts';

/** What is plugged in, and what was proved before. */
export interface Plugged {
  readonly list: PortList | null;
  /** Null until it is known. */
  readonly known: InstrumentList['instruments'] | null;
  look(): void;
}

export function usePlugged(): Plugged {
  const [list, setList] = useState<PortList | null>(null);
  const [known, setKnown] = useState<InstrumentList['instruments'] | null>(null);
  const look = useCallback(() => {
    void askPorts().then(setList);
    void askInstruments().then((found) => setKnown(found?.instruments ?? []));
  }, []);
  useEffect(look, [look]);
  return { list, known, look };
}

/** What was proved of each instrument. */
export function provedOf({ known }: Plugged): readonly ProvedInstrument[] {
  return known?.map(({ proved }) => proved) ?? [];
}
