/** A process whose jobs wait: `node waitingWorker.ts FOLDER URL MS`. It says `ready`, and `done AT` of each. */
import { setTimeout as wait } from 'node:timers/promises';
import { openQueue } from '../jobs.ts';
import { openStore } from '../store.ts';

const [, , folder = '', databaseUrl = '', ms = ''] = process.argv;
const say = (line: string): void => void process.stdout.write(`${line}\n`);

const { value: store } = await openStore({ folder, databaseUrl });
if (store === undefined) throw new Error('The worker could not open the store.');
const queue = await openQueue(store, (error) => say(`error ${error.message}`));
await queue.work('wait', 1, async () => {
  await wait(Number(ms));
  say(`done ${Date.now()}`);
});
say('ready');
