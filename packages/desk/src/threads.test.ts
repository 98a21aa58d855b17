import { Worker } from 'node:worker_threads';
import { describe, expect, test } from 'vitest';
import { Asker } from './asker.ts';
import { Pool } from './pool.ts';
import { keepsProtocol } from './testdata/keepsProtocol.ts';
import type { Trial } from './testdata/trial.ts';
import { threadPort } from './threads.ts';

const openThread = () => threadPort(new Worker(new URL('./testdata/trialThread.ts', import.meta.url)));

describe('over worker threads', () => {
  keepsProtocol(openThread);

  test('a thread that dies fails what is open and what comes after', async () => {
    const desk = new Asker<Trial>(threadPort(new Worker('throw new Error("no memory")', { eval: true })));
    await expect(desk.ask('double', { n: 1 })).rejects.toThrow('no memory');
    await expect(desk.ask('double', { n: 1 })).rejects.toThrow('no memory');
  });
});

describe('a pool of two', () => {
  test('answers many questions of one name, none in the place of another', async () => {
    const pool = new Pool<Trial>([openThread(), openThread()]);
    const answers = await Promise.all(Array.from({ length: 20 }, (_, n) => pool.ask('double', { n })));
    expect(answers).toEqual(Array.from({ length: 20 }, (_, n) => 2 * n));
    await expect(pool.ask('fail', { message: 'no' })).rejects.toThrow('no');
    expect(await pool.ask('double', { n: 4 })).toBe(8);
    pool.close();
  });

  test('works on two questions at once', async () => {
    const pool = new Pool<Trial>([openThread(), openThread()]);
    await Promise.all([pool.ask('double', { n: 0 }), pool.ask('double', { n: 0 })]);
    const endless = new AbortController();
    const long = pool.ask('work', { pauses: 1e9 }, endless.signal);
    expect(await pool.ask('double', { n: 8 })).toBe(16);
    endless.abort();
    expect(await long).toBeUndefined();
    pool.close();
  });
});
