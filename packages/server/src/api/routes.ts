import type { FastifyInstance } from 'fastify';
import { refusal } from '../refusal.ts';
import { errandRoutes } from './errands.ts';
import { fileRoutes } from './files.ts';
import { backupRoutes } from './backups.ts';
import { courseRoutes } from './courses.ts';
import type { Keeping } from './kept.ts';
import { keptPlanRoutes } from './keptPlans.ts';
import { numbersRoutes } from './numbers.ts';
import { describeApi } from './openApi.ts';
import { playerRoutes } from './players.ts';
import { recordRoutes } from './records.ts';
import type { Courses } from '../work/storedCourses.ts';
import type { Api } from './route.ts';

/** What a phone and the pages ask for besides files: never kept by a browser. */
const NOT_KEPT = { 'cache-control': 'no-store' };

/** Adds all addresses under /api that work on the store; without one they are there, and refuse. */
export async function apiRoutes(app: FastifyInstance, keeping: Keeping | undefined, courses: Courses): Promise<void> {
  await describeApi(app);
  await app.register((inner) => {
    const api = inner as unknown as Api;
    // A form elsewhere can send text without asking first: it is read nowhere.
    api.removeContentTypeParser('text/plain');
    api.addContentTypeParser('application/octet-stream', { parseAs: 'buffer' }, (_, body, done) => done(null, body));
    api.addHook('onRequest', async (_, reply) => {
      reply.headers(NOT_KEPT);
      if (keeping === undefined)
        throw refusal(503, 'no-store', 'server', 'no store behind it', 'a server started with one');
    });
    // Without a store no handler is reached.
    const kept = keeping ?? ({} as Keeping);
    playerRoutes(api, kept);
    recordRoutes(api, kept);
    keptPlanRoutes(api, kept);
    courseRoutes(api, courses);
    backupRoutes(api, kept);
    numbersRoutes(api, kept);
    errandRoutes(api, kept);
    fileRoutes(api, kept);
    return Promise.resolve();
  });
}
