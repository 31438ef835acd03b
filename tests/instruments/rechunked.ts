import type { PortMaker } from '../../daemon/ports/port.ts';

/** So many bytes come one by one at first, so that every border of the first frames is one between two pieces. */
const oneByOne = 2000;

/** Hands on what a port receives byte by byte at first, then in pieces of 1, 2, 3 … `most` bytes, and again from 1. */
export function rechunked(maker: PortMaker, most: number): PortMaker {
  let size = 0;
  let given = 0;
  return {
    path: maker.path,
    open: (line, listener) =>
      maker.open(line, {
        ...listener,
        closed: (error) => listener.closed(error),
        data: (bytes, stamp) => {
          for (let at = 0; at < bytes.length; at += size) {
            size = given < oneByOne ? 1 : (size % most) + 1;
            given += size;
            listener.data(bytes.subarray(at, at + size), stamp);
          }
        },
      }),
  };
}
