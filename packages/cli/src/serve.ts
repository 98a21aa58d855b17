import { type Fault, type Read, wordFault } from '@leeway/contract';
import {
  buildWeb,
  demoFiles,
  type NamedText,
  serve as listen,
  type Serving,
  type ShelfFiles,
  type StockedShelf,
  stockShelf,
  tryPort,
  withOpeningHole,
} from '@leeway/server';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { CAP_BYTES, readTextCapped, wordSystemError } from './files.ts';
import { parseWhole } from './quantities.ts';

const USUAL_PORT = 4310;

/** `leeway serve`: the app on this machine, until it is interrupted. */
export const serve: Command = {
  name: 'serve',
  summary: 'the app in a browser on this machine: the chart and the plan of a hole, for made-up or own files',
  usage: ['leeway serve [--ground FILE …] [--player FILE …] [--port 4310] [--data DIR]'],
  examples: ['leeway serve', 'leeway serve --ground course.osm --player kim.json', 'leeway serve --port 8080'],
  options: {
    ground: { kind: 'text', value: 'FILE', many: true, help: 'mapped ground to open besides the made-up course' },
    player: { kind: 'text', value: 'FILE', many: true, help: 'a player to open besides the made-up ones' },
    port: { kind: 'text', value: 'N', help: `port to listen on, ${USUAL_PORT} unless said; 0 takes any free one` },
    data: { kind: 'text', value: 'DIR', help: 'not yet: nothing is stored, so the folder is left alone' },
  },
  run: runServe,
};

async function runServe(given: Given, io: Io): Promise<number> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const port = parseWhole('port', given.text('port') ?? String(USUAL_PORT), [0, 65_535]);
  if (given.text('data') !== undefined) io.err('leeway serve: nothing is stored yet; --data is left alone\n');
  const stocked = await stock(given, io);
  if (stocked === undefined) return 1;
  const serving = await startOn(port, stocked, io).catch((error: unknown) => {
    if (!isSystemError(error)) throw error;
    io.err(`leeway serve: port ${port}: found ${portWords(error)}; expected a free port, or --port 0\n`);
    return undefined;
  });
  if (serving === undefined) return 1;
  io.out(
    given.flag('json') ? `${JSON.stringify({ address: serving.address })}\n` : `Leeway is at ${serving.address}\n`,
  );
  await interrupted();
  await serving.close();
  return 0;
}

/** Own files first, then the demo; `undefined` when a file was refused, which has been told. */
async function stock(given: Given, io: Io): Promise<StockedShelf | undefined> {
  const own = await ownFiles(given);
  const demo = await demoFiles();
  const read =
    own.value === undefined
      ? { faults: own.faults }
      : stockShelf({
          grounds: [...own.value.grounds, ...demo.grounds],
          players: [...own.value.players, ...demo.players],
        });
  for (const fault of read.faults.filter((f) => f.level === 'refused')) io.err(`${wordFault(fault)}\n`);
  return read.value;
}

async function ownFiles(given: Given): Promise<Read<ShelfFiles>> {
  const faults: Fault[] = [];
  const texts = async (option: 'ground' | 'player'): Promise<readonly NamedText[]> => {
    const found: NamedText[] = [];
    for (const name of given.texts(option)) {
      const read = await readTextCapped(name, CAP_BYTES[option]);
      faults.push(...read.faults);
      if (read.value !== undefined) found.push({ name, text: read.value });
    }
    return found;
  };
  const grounds = await texts('ground');
  const players = (await texts('player')).map((file) => ({ ...file, shots: [] }));
  return faults.length > 0 ? { faults } : { value: { grounds, players }, faults };
}

/** Builds what is not built yet, and listens. The port is tried first, since building takes a while. */
async function startOn(port: number, stocked: StockedShelf, io: Io): Promise<Serving> {
  const tell = (line: string): void => io.err(`leeway serve: ${line}\n`);
  await tryPort(port);
  const page = await buildWeb(tell);
  return listen(port, { page, stocked: await withOpeningHole(stocked, page, tell) }, (error) => tell(messageOf(error)));
}

const isSystemError = (error: unknown): boolean =>
  error instanceof Error && 'syscall' in error && error.syscall === 'listen';

function portWords(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'EADDRINUSE' ? 'it in use' : wordSystemError(error);
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const interrupted = (): Promise<void> =>
  new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
