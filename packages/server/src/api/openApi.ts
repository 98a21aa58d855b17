import swagger from '@fastify/swagger';
import type { FastifyInstance, FastifySchema } from 'fastify';
import { asJsonSchema } from './route.ts';
import { apiPage, type ApiDocument } from './apiPage.ts';

const PARTS = ['body', 'querystring', 'params', 'headers'] as const;

/** Makes the document of the API out of the routes that are added after it, and a plain page of it. To be awaited before any route. */
export async function describeApi(app: FastifyInstance): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: { title: 'Leeway', version: '1', description: 'Figures are metric; changes need the header x-leeway: 1.' },
    },
    transform: ({ schema, url }) => ({ schema: asJsonSchemas(schema), url }),
  });
  const hidden = { schema: { hide: true } };
  app.get('/api/openapi.json', hidden, () => app.swagger());
  app.get('/api', hidden, (_, reply) =>
    reply.type('text/html; charset=utf-8').send(apiPage(app.swagger() as unknown as ApiDocument)),
  );
}

function asJsonSchemas(schema: FastifySchema | undefined): FastifySchema {
  const made: Record<string, unknown> = { ...schema };
  for (const part of PARTS) if (made[part] !== undefined) made[part] = asJsonSchema(made[part]);
  const { response } = schema ?? {};
  if (response !== undefined && response !== null)
    made['response'] = Object.fromEntries(
      Object.entries(response).map(([status, answer]) => [status, asJsonSchema(answer)]),
    );
  return made;
}
