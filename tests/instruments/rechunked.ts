import type { PortMaker } from '../../daemon/ports/port.ts';

/** Hands on what a port receives in pieces of 1, 2, 3 … `most` bytes, and again from 1. */
export function rechunked(maker: PortMaker, most: number): PortMaker {
  let size = 0;
  return {
    path: maker.path,
    open: (line, listener) =>
      maker.open(line, {
        ...listener,
        closed: (error) => listener.closed(error),
        data: (bytes, stamp) => {
          for (let at = 0; at < bytes.length; at += size) {
            size = (size % most) + 1;
            listener.data(bytes.subarray(at, at + size), stamp);
          }
        },
      }),
  };
}
