// Keeps the page on this device, so that it opens whether or not the tool answers. Nothing that was measured is kept
// here: the API and the socket go past it.

interface Waiting extends Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Fetching extends Waiting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Worker extends EventTarget {
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
}

/** Every file of the page and a digest of them all; put in when the page is built. */
declare const FILES: readonly string[];
declare const DIGEST: string;

/** How long a page that is asked for may take before the kept one is shown, ms. */
const patienceMs = 3000;
const kept = `page ${DIGEST}`;
const worker = globalThis as unknown as Worker;

worker.addEventListener('install', (event) => {
  const keep = async () => {
    const cache = await caches.open(kept);
    await cache.addAll(['./', ...FILES].map((file) => new Request(file, { cache: 'reload' })));
    await worker.skipWaiting();
  };
  (event as Waiting).waitUntil(keep());
});

worker.addEventListener('activate', (event) => {
  const tidy = async () => {
    const older = (await caches.keys()).filter((name) => name !== kept);
    await Promise.all(older.map((name) => caches.delete(name)));
    await worker.clients.claim();
  };
  (event as Waiting).waitUntil(tidy());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event as Fetching;
  if (request.mode === 'navigate') (event as Fetching).respondWith(newestPage(request));
  else if (isFile(request)) (event as Fetching).respondWith(keptOr(request));
});

/** The page of the tool when it answers in time, so that page and tool are of one version; else the kept one. */
async function newestPage(request: Request): Promise<Response> {
  try {
    return await fetch(request, { signal: AbortSignal.timeout(patienceMs) });
  } catch {
    return keptOr(new Request('./'));
  }
}

async function keptOr(request: Request): Promise<Response> {
  return (await caches.match(request)) ?? fetch(request);
}

function isFile({ method, url }: Request): boolean {
  const here = new URL('./', location.href).href;
  return method === 'GET' && url.startsWith(here) && FILES.includes(url.slice(here.length));
}
