import type { PlanDocument } from '@leeway/contract';
import { Readable } from 'node:stream';
import fastify, { type FastifyInstance } from 'fastify';
import { isLoopbackHost } from './hosts.ts';
import { planPage } from './planPage.ts';
import { MARK, STYLE } from './style.ts';

/** No script, nothing from elsewhere, no frame round it. */
const HEADERS = {
  'content-security-policy':
    "default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
};

/** The web server, not yet listening. `plan` gives the plan that the first page shows; what goes wrong is put to `told`. */
export function createApp(plan: () => Promise<PlanDocument>, told: (error: unknown) => void): FastifyInstance {
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

  app.get('/', (_, reply) => reply.type('text/html; charset=utf-8').send(Readable.from(planPage(plan(), told))));
  app.get('/style.css', (_, reply) => reply.type('text/css; charset=utf-8').send(STYLE));
  app.get('/mark.svg', (_, reply) => reply.type('image/svg+xml').send(MARK));
  app.get('/health', () => ({ ok: true }));
  return app;
}
