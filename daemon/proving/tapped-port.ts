import type { Stamp } from '../../shared/session/events.ts';
import type { PortMaker } from '../ports/port.ts';

/** A port whose bytes somebody else hears too, before whoever opened it. */
export function tapped(port: PortMaker, hear: (bytes: Buffer, stamp: Stamp) => void): PortMaker {
  return {
    path: port.path,
    open: (line, listener) =>
      port.open(line, {
        data(bytes, stamp) {
          hear(bytes, stamp);
          listener.data(bytes, stamp);
        },
        closed: (error) => listener.closed(error),
      }),
  };
}
