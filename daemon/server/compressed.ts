import { existsSync, readdirSync } from 'node:fs';
import { extname, join } from 'node:path';
import type { RequestHandler } from 'express';

/** Compressed forms by the end of their file names, the smaller one first. */
const forms = { br: 'br', gzip: 'gz' } as const;

/**
 * Turns a request for a file of the page to its compressed form, which the build laid beside it, where the browser takes
 * one; the file server behind it does the rest. Only files that were there at the start are ever named.
 */
export function compressed(folder: string): RequestHandler {
  const files = new Set(existsSync(folder) ? readdirSync(folder, { recursive: true }).map(String) : []);
  return (request, response, next) => {
    const path = request.path === '/' ? 'index.html' : request.path.slice(1);
    const file = join(path);
    const here = (['br', 'gzip'] as const).filter((form) => files.has(`${file}.${forms[form]}`));
    if (here.length === 0) return next();
    response.vary('Accept-Encoding');
    const form = request.acceptsEncodings(...here);
    if (form === 'br' || form === 'gzip') {
      request.url = `/${path}.${forms[form]}`;
      response.type(extname(path)).set('Content-Encoding', form);
    }
    next();
  };
}
