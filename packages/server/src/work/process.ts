/** A worker process of a server: `fork(process.ts, [FOLDER])`, with DATABASE_URL. It goes when the one that started it has gone. */
import { wordFault } from '@leeway/contract';
import { startWorking } from './worker.ts';

const [, , folder = ''] = process.argv;
const tell = (line: string): void => void process.stderr.write(`leeway worker: ${line}\n`);
const databaseUrl = process.env['DATABASE_URL'] ?? '';

const { value: working, faults } = await startWorking({ folder, databaseUrl }, tell);
if (working === undefined) {
  for (const fault of faults) tell(wordFault(fault));
  process.exit(1);
}
process.once('disconnect', () => void working.stop().finally(() => process.exit(0)));
// Whoever interrupts the server interrupts its processes too: the server tells them when.
process.on('SIGINT', () => undefined);
