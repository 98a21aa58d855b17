import { type Job, type JobResult, type JobWithMetadata, PgBoss } from 'pg-boss';
import type { Sql } from './sql.ts';
import type { Store } from './store.ts';

/**
 * What a job is about: ids only. What it needs to know it reads from the store, and what it finds it puts there, so that nothing that could say
 * who a player is stands in the queue's tables.
 */
export interface JobSubject {
  readonly owner: string;
  /** Records. */
  readonly about: readonly string[];
}

export interface RunningJob extends JobSubject {
  readonly id: string;
  /** 0 at the first run. */
  readonly retry: number;
  /** Aborted when the queue stops, or the job's worker was taken for dead. */
  readonly signal: AbortSignal;
}

export type JobState = 'waiting' | 'running' | 'done' | 'failed';

export interface JobStanding extends JobSubject {
  readonly state: JobState;
  /** 0 at the first run. */
  readonly retry: number;
}

/** The queue of long work. A job that was accepted is on stable storage. */
export interface JobQueue {
  /** Queues a job under an id; under one that has been queued it is not queued again. */
  send(task: string, subject: JobSubject, id: string): Promise<void>;
  /** How a job stands; undefined when there is none of this id, or it ended long ago. */
  find(task: string, id: string): Promise<JobStanding | undefined>;
  /** Does the jobs of a task here, at most so many at once. A handler that throws has its job run again, three times at most. */
  work(task: string, atOnce: number, handle: (job: RunningJob) => Promise<void>): Promise<void>;
  /** Waits for the jobs that run here, at most 30 s, and lets go. */
  stop(): Promise<void>;
}

const SCHEMA = 'leeway_jobs';
/** A worker that has not been heard of for so long is dead, and its job is run again elsewhere. The least that pg-boss allows. */
const HEARTBEAT_SECONDS = 10;
const SUPERVISE_SECONDS = 2;
/** Runs after the first: for killed workers and for handlers that threw. */
const RETRIES = 3;
const LONGEST_JOB_SECONDS = 3600;
/** Workers are woken by a notification, and by themselves after work; they look now and then besides. */
const POLLING = { pollingIntervalSeconds: 2, notifyPollingIntervalSeconds: 2 } as const;

const STATES: { readonly [S in JobWithMetadata['state']]: JobState } = {
  created: 'waiting',
  retry: 'waiting',
  active: 'running',
  completed: 'done',
  cancelled: 'failed',
  failed: 'failed',
};

/** Opens the job queue of a store. `onError` hears of what goes wrong in the background; the queue goes on. */
export async function openQueue({ database }: Store, onError: (error: Error) => void): Promise<JobQueue> {
  const boss = new PgBoss({
    ...database.forJobs,
    schema: SCHEMA,
    useListenNotify: true,
    superviseIntervalSeconds: SUPERVISE_SECONDS,
    monitorIntervalSeconds: SUPERVISE_SECONDS,
    // Nothing runs by the clock, and the embedded engine keeps its own house.
    schedule: false,
    reindex: database.forJobs.backend === 'postgres',
    monitorVacuum: database.forJobs.backend === 'postgres',
  });
  boss.on('error', onError);
  await boss.start();

  const ready = new Set<string>();
  const assertTask = async (task: string): Promise<void> => {
    if (ready.has(task)) return;
    await boss.createQueue(task, {
      notify: true,
      heartbeatSeconds: HEARTBEAT_SECONDS,
      expireInSeconds: LONGEST_JOB_SECONDS,
      retryLimit: RETRIES,
      retryDelay: 0,
    });
    ready.add(task);
  };

  return {
    send: async (task, { owner, about }, id) => {
      await assertTask(task);
      // Nothing is returned for an id that is there already.
      await boss.send(task, { owner, about }, { id });
    },
    find: async (task, id) => {
      await assertTask(task);
      const [job] = await boss.findJobs<JobSubject>(task, { id });
      if (job === undefined) return undefined;
      return { ...job.data, state: STATES[job.state], retry: job.retryCount };
    },
    work: async (task, atOnce, handle) => {
      await assertTask(task);
      const settle = async ({ id, data, retryCount, signal }: Job<JobSubject>): Promise<JobResult> => {
        try {
          await handle({ id, ...data, retry: retryCount, signal });
          return { id, status: 'completed' };
        } catch (error) {
          onError(error instanceof Error ? error : new Error(String(error)));
          return { id, status: 'failed' };
        }
      };
      const options = { ...POLLING, batchSize: atOnce, perJobResults: true } as const;
      const worker: string = await boss.work(task, options, async (jobs: Job<JobSubject>[]) => {
        const results = await Promise.all(jobs.map(settle));
        // Where there was work there may be more: it is looked for at once, not at the next turn of the clock.
        boss.notifyWorker(worker);
        return results;
      });
    },
    stop: () => boss.stop({ graceful: true, timeout: 30_000, close: true }),
  };
}

/** Removes every job about an owner, running or not; returns how many. */
export async function eraseJobs(sql: Sql, owner: string): Promise<number> {
  const [table] = await sql.query<{ name: string | null }>(`SELECT to_regclass('${SCHEMA}.job')::text AS name`);
  if (table?.name === null || table === undefined) return 0;
  const rows = await sql.query(`DELETE FROM ${SCHEMA}.job WHERE data->>'owner' = $1 RETURNING id`, [owner]);
  return rows.length;
}
