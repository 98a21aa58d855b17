import { type Command, type Given, type Io, Usage } from './command.ts';
import { DATA_OPTION, placeOf, told } from './data.ts';
import { interrupted } from './interrupted.ts';

/** `leeway work`: a worker process for a store on a server. */
export const work: Command = {
  name: 'work',
  summary: 'do the long work of a store on a PostgreSQL server, beside the others who do, until it is interrupted',
  usage: [
    'leeway work --data DIR',
    '',
    'DATABASE_URL names the server; DIR holds the keys, the same folder for every process.',
  ],
  examples: ['leeway work --data /srv/leeway'],
  options: { data: DATA_OPTION },
  run: runWork,
};

async function runWork(given: Given, io: Io): Promise<number> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const folder = given.text('data');
  if (folder === undefined) throw new Usage('--data DIR is needed: the folder that holds the keys');
  const place = placeOf(folder);
  if (place.databaseUrl === undefined)
    throw new Usage('no DATABASE_URL; the embedded database is worked on by leeway serve itself');
  const { startWorking } = await import('@leeway/server');
  const { value, faults } = await startWorking(place, (line) => io.err(`leeway work: ${line}\n`));
  if (value === undefined) return told(faults, io);
  io.out(given.flag('json') ? `${JSON.stringify({ working: true })}\n` : 'Leeway is at work\n');
  await interrupted();
  await value.stop();
  return 0;
}
