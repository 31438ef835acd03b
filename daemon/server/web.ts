import express, { type Express, type NextFunction, type Request, type Response } from 'express';
import type { SentError } from '../../shared/messages.ts';
import { compressed } from './compressed.ts';
import { isFromHere, isOwnRequest, securityHeaders } from './guard.ts';
import { Rate } from './rate.ts';

/** What one address in the network may ask; a page with all that belongs to it is a dozen requests. */
const requests = { perS: 20, burst: 100 };

/**
 * The page and the API behind one guard: whoever is not the daemon's own page gets nothing, and who only watches
 * changes nothing.
 */
export function webApp(
  apis: readonly express.Router[],
  pageFolder: string,
  port: () => number,
  mayControl: (request: Request) => boolean,
): Express {
  const app = express();
  const rate = new Rate(requests);
  app.disable('x-powered-by');
  app.set('query parser', 'simple');
  app.use((request, response, next) => {
    response.set(securityHeaders);
    const { socket } = request;
    if (!isOwnRequest(request, port())) {
      response.status(403).type('text').send('This address is not served here.\n');
    } else if (!isFromHere(socket) && !rate.allows(socket.remoteAddress ?? '')) {
      response.status(429).set('Retry-After', '5').type('text').send('Too many requests.\n');
    } else next();
  });
  app.use('/api', (_request, response, next) => {
    response.set('Cache-Control', 'no-store');
    next();
  });
  app.use('/api', (request, response, next) => {
    const changes = request.method !== 'GET' && request.method !== 'HEAD';
    // A device that wants to be paired is not yet.
    if (!changes || request.path === '/pair' || mayControl(request)) return next();
    response.status(403).json({
      code: 'command.notPaired',
      place: 'request',
      message: 'this device only watches',
      remedy: 'pair it on the computer that Wayscribe runs on',
    } satisfies SentError);
  });
  for (const api of apis) app.use('/api', api);
  app.use(compressed(pageFolder));
  app.use(express.static(pageFolder, { index: 'index.html', cacheControl: false }));
  app.use((_request, response) => {
    response.status(404).type('text').send('There is nothing at this address.\n');
  });
  app.use((error: { status?: unknown }, _request: Request, response: Response, next: NextFunction) => {
    if (response.headersSent) return next(error);
    const status = typeof error.status === 'number' && error.status >= 400 ? error.status : 500;
    if (status === 500) console.error(error);
    response.status(status).type('text').send('This request can not be answered.\n');
  });
  return app;
}
