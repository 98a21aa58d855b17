import { type Job, type JobResult, PgBoss } from 'pg-boss';
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

/** The queue of long work. A job that was accepted is on stable storage. */
export interface JobQueue {
  /** Queues a job; returns its id. */
  send(task: string, subject: JobSubject): Promise<string>;
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
/** Workers are woken by a notification; they look by themselves too, and at once after a full batch. */
const POLLING = { burstWhenBatchFull: true, pollingIntervalSeconds: 2, notifyPollingIntervalSeconds: 2 } as const;

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
    send: async (task, { owner, about }) => {
      await assertTask(task);
      const id = await boss.send(task, { owner, about });
      if (id === null) throw new Error(`A job for ${task} was not taken.`);
      return id;
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
      await boss.work(task, options, (jobs: Job<JobSubject>[]) => Promise.all(jobs.map(settle)));
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
