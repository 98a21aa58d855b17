import fastifyStatic from '@fastify/static';
import fastify, { type FastifyInstance, type FastifyServerOptions } from 'fastify';
import type * as z from 'zod';
import type { Fault } from '@leeway/contract';
import { PAGE_PATHS } from '@leeway/web/pages';
import type { Keeping } from './api/kept.ts';
import { apiRoutes } from './api/routes.ts';
import { checkRequest } from './api/route.ts';
import { type Door, doorkeeper } from './door.ts';
import { Refusal } from './refusal.ts';
import type { StockedShelf } from './shelf.ts';
import { withStored } from './storedShelf.ts';
import { storedCourses } from './work/storedCourses.ts';

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
/** For a whole request to come in: who sends slower holds a place that others need. */
const LONGEST_REQUEST_MS = 300_000;
const SIGN_IN = { 'www-authenticate': 'Basic realm="Leeway", charset="UTF-8"' };

/** What the server serves: the folder of the built page, the files it may open, and the store behind it. */
export interface Served {
  readonly page: string;
  readonly stocked: StockedShelf;
  /** Without it everything about players and courses that are kept is refused. */
  readonly keeping?: Keeping;
  readonly door?: Door;
  /** Holds every answer to the schema of its route, which takes time: for tests. */
  readonly holdsAnswers?: true;
  /** The server's own certificate and key. */
  readonly tls?: { readonly cert: string; readonly key: string };
}

/** The web server, not yet listening. What goes wrong is put to `told`. */
export async function createApp(served: Served, told: (error: unknown) => void): Promise<FastifyInstance> {
  const { page, stocked, keeping, door = {}, tls } = served;
  const options: FastifyServerOptions = {
    logger: false,
    trustProxy: door.trustedProxy ?? false,
    requestTimeout: LONGEST_REQUEST_MS,
  };
  const app = fastify({ ...options, ...(tls === undefined ? {} : { https: tls }) });
  const turnsAway = doorkeeper(door);

  app.addHook('onRequest', async (request, reply) => {
    reply.headers(HEADERS);
    const away = turnsAway(request);
    if (away === undefined) return;
    const { status, code, found, expected } = away;
    if (status === 401) reply.headers(SIGN_IN);
    throw new Refusal([{ code, level: 'refused', file: 'request', found, expected }], status);
  });
  app.setValidatorCompiler(checkRequest);
  app.setSerializerCompiler<z.ZodType>(({ schema }) => (data) => {
    const json = JSON.stringify(data);
    if (served.holdsAnswers === true) schema.parse(JSON.parse(json));
    return json;
  });
  app.setNotFoundHandler((request, reply) => {
    if (!request.url.startsWith('/api/'))
      return reply.code(404).type('text/plain; charset=utf-8').send('No such page.\n');
    return reply.code(404).send({ faults: [faultOf('no-such-address', 'an address', 'one that /api lists')] });
  });
  app.setErrorHandler((error, request, reply) => {
    const status = error instanceof Error && 'statusCode' in error ? Number(error.statusCode) : 500;
    if (status >= 500 && !(error instanceof Refusal)) told(error);
    const said = status < 500 && error instanceof Error ? error.message : 'something that went wrong inside';
    const faults = error instanceof Refusal ? error.faults : [faultOf('request', said, 'a request that can be done')];
    reply.code(status);
    if (request.url.startsWith('/api/')) return reply.send({ faults });
    return reply.type('text/plain; charset=utf-8').send(`${wordsOf(faults)}\n`);
  });

  app.get('/health', { schema: { hide: true } }, () => ({ ok: true }));
  const courses = storedCourses(keeping?.store);
  await apiRoutes(app, keeping, courses);
  app.get('/api/shelf', { schema: { hide: true } }, async (_, reply) =>
    reply.header('cache-control', ASK_AGAIN).send(await withStored(stocked.shelf, keeping?.store, courses)),
  );
  app.get<{ Params: { id: string } }>('/api/files/:id', { schema: { hide: true } }, (request, reply) => {
    const json = stocked.sent.get(request.params.id);
    if (json === undefined) return reply.callNotFound();
    return reply.header('cache-control', FOR_EVER).type('application/json; charset=utf-8').send(json);
  });
  await app.register(fastifyStatic, {
    root: page,
    preCompressed: true,
    cacheControl: false,
    schemaHide: true,
    setHeaders: (reply, path) =>
      void reply.header('cache-control', /\/(?:assets|prepared)\//.test(path) ? FOR_EVER : ASK_AGAIN),
  });
  for (const path of Object.values(PAGE_PATHS).filter((p) => p !== '/'))
    app.get(path, { schema: { hide: true } }, (_, reply) => reply.sendFile('index.html'));
  return app;
}

const faultOf = (code: string, found: string, expected: string): Fault => ({
  code,
  level: 'refused',
  file: 'request',
  found,
  expected,
});

const wordsOf = (faults: readonly Fault[]): string =>
  faults.map(({ found, expected }) => `Found ${found}; expected ${expected}.`).join('\n');
