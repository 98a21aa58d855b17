import fastifyStatic from '@fastify/static';
import fastify, { type FastifyInstance } from 'fastify';
import { isLoopbackHost } from './hosts.ts';
import type { StockedShelf } from './shelf.ts';

/** Scripts, styles, fonts and pictures of the page's own files alone; nothing from elsewhere, no frame round it. WebAssembly is the engine's. */
const HEADERS = {
  'content-security-policy': [
    "default-src 'none'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "worker-src 'self'",
    "style-src 'self'",
    "font-src 'self'",
    "img-src 'self' blob:",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
};

/** For what is named by a hash of itself. */
const FOR_EVER = 'public, max-age=31536000, immutable';
const ASK_AGAIN = 'no-cache';

/** What the server serves: the folder of the built page, and the files it may open. */
export interface Served {
  readonly page: string;
  readonly stocked: StockedShelf;
}

/** The web server, not yet listening. What goes wrong is put to `told`. */
export function createApp({ page, stocked }: Served, told: (error: unknown) => void): FastifyInstance {
  const app = fastify({ logger: false });

  app.addHook('onRequest', async (request, reply) => {
    reply.headers(HEADERS);
    if (!isLoopbackHost(request.headers.host)) {
      await reply.code(421).type('text/plain; charset=utf-8').send('Leeway answers only on this machine.\n');
    }
  });
  app.setNotFoundHandler((_, reply) => reply.code(404).type('text/plain; charset=utf-8').send('No such page.\n'));
  app.setErrorHandler((error, _, reply) => {
    const status = error instanceof Error && 'statusCode' in error ? Number(error.statusCode) : 500;
    if (status >= 500) told(error);
    const said = status < 500 && error instanceof Error ? error.message : 'Something went wrong.';
    return reply.code(status).type('text/plain; charset=utf-8').send(`${said}\n`);
  });

  app.get('/health', () => ({ ok: true }));
  app.get('/api/shelf', (_, reply) => reply.header('cache-control', ASK_AGAIN).send(stocked.shelf));
  app.get<{ Params: { id: string } }>('/api/files/:id', (request, reply) => {
    const json = stocked.sent.get(request.params.id);
    if (json === undefined) return reply.callNotFound();
    return reply.header('cache-control', FOR_EVER).type('application/json; charset=utf-8').send(json);
  });
  void app.register(fastifyStatic, {
    root: page,
    preCompressed: true,
    cacheControl: false,
    setHeaders: (reply, path) =>
      void reply.header('cache-control', /\/(?:assets|prepared)\//.test(path) ? FOR_EVER : ASK_AGAIN),
  });
  return app;
}
