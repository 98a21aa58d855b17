/** A process that works: `node workerProcess.ts FOLDER URL`. It says `ready`. */
import { startWorking } from '../work/worker.ts';

const [, , folder = '', databaseUrl = ''] = process.argv;
const say = (line: string): void => void process.stdout.write(`${line}\n`);
const { value, faults } = await startWorking({ folder, databaseUrl }, say);
say(value === undefined ? JSON.stringify(faults) : 'ready');
