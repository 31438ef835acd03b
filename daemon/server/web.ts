import express, { type Express } from 'express';
import { isOwnRequest, securityHeaders } from './guard.ts';

/** The page and the API behind one guard: whoever is not this computer's own page gets nothing. */
export function webApp(api: express.Router, pageFolder: string, port: () => number): Express {
  const app = express();
  app.disable('x-powered-by');
  app.use((request, response, next) => {
    response.set(securityHeaders);
    if (isOwnRequest(request, port())) next();
    else response.status(403).type('text').send('This address is not served here.\n');
  });
  app.use('/api', (_request, response, next) => {
    response.set('Cache-Control', 'no-store');
    next();
  });
  app.use('/api', api);
  app.use(express.static(pageFolder, { index: 'index.html', cacheControl: false }));
  return app;
}
