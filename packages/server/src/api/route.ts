import type {
  FastifyInstance,
  FastifySchemaCompiler,
  FastifyTypeProvider,
  RawServerDefault,
  FastifyBaseLogger,
} from 'fastify';
import type { IncomingMessage, ServerResponse } from 'node:http';
import * as z from 'zod';
import { faultsOfIssues } from '@leeway/contract';
import { Refusal } from '../refusal.ts';

/** What a request holds has the type of the schema that checked it. */
interface CheckedTypes extends FastifyTypeProvider {
  validator: this['schema'] extends z.ZodType ? z.output<this['schema']> : unknown;
}

export type Api = FastifyInstance<RawServerDefault, IncomingMessage, ServerResponse, FastifyBaseLogger, CheckedTypes>;

/** What makes a fastify check requests by the contract's own schemas, and word what it refuses as every reader does. */
export const checkRequest: FastifySchemaCompiler<z.ZodType> =
  ({ schema, httpPart }) =>
  (data: unknown) => {
    const parsed = schema.safeParse(data);
    if (parsed.success) return { value: parsed.data };
    return { error: new Refusal(faultsOfIssues(parsed.error.issues, data, httpPart ?? 'request'), 400) };
  };

/** A route's schemas as JSON Schema (2020-12), for the document of the API. */
export function asJsonSchema(schema: unknown): unknown {
  return schema instanceof z.ZodType ? z.toJSONSchema(schema, { unrepresentable: 'any', reused: 'inline' }) : schema;
}
