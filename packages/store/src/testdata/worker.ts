/** A process that works: `node worker.ts FOLDER [URL]`. It says `began ID RETRY` and `done ID`; a first run takes a minute, a second none. */
import { setTimeout as wait } from 'node:timers/promises';
import { openQueue } from '../jobs.ts';
import { openStore } from '../store.ts';

const [, , folder = '', databaseUrl] = process.argv;
const say = (line: string): void => void process.stdout.write(`${line}\n`);

const { value: store } = await openStore({ folder, ...(databaseUrl === undefined ? {} : { databaseUrl }) });
if (store === undefined) throw new Error('The worker could not open the store.');
const queue = await openQueue(store, (error) => say(`error ${error.message}`));
await queue.work('plan', 1, async ({ id, retry }) => {
  say(`began ${id} ${retry}`);
  if (retry === 0) await wait(60_000);
  say(`done ${id}`);
});
say('ready');
