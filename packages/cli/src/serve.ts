import { type Fault, type Read, wordFault } from '@leeway/contract';
import {
  bindingFaults,
  buildWeb,
  demoFiles,
  type Door,
  type NamedText,
  type OpenKeeping,
  openKeeping,
  type Served,
  serve as listen,
  type Serving,
  type ShelfFiles,
  type StockedShelf,
  stockShelf,
  tryPort,
  withOpeningHole,
} from '@leeway/server';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { placeOf, told, USUAL_FOLDER } from './data.ts';
import { CAP_BYTES, readTextCapped, wordSystemError } from './files.ts';
import { interrupted } from './interrupted.ts';
import { parseWhole } from './quantities.ts';

const USUAL_PORT = 4310;

/** `leeway serve`: the app, until it is interrupted. */
export const serve: Command = {
  name: 'serve',
  summary: 'the app in a browser: the chart and the plan of a hole, for made-up or own files, and the store behind it',
  usage: [
    'leeway serve [--data DIR] [--ground FILE …] [--player FILE …] [--port 4310]',
    'leeway serve --bind ADDRESS --host NAME (--tls-cert FILE --tls-key FILE | --trusted-proxy ADDRESS)',
    '',
    'It listens on this machine alone unless --bind says otherwise; then LEEWAY_PASSPHRASE holds a passphrase that is asked of everybody.',
    'DATABASE_URL names a PostgreSQL server to keep things on; the folder then holds the keys.',
  ],
  examples: ['leeway serve', 'leeway serve --ground course.osm --player kim.json', 'leeway serve --data /srv/leeway'],
  options: {
    data: { kind: 'text', value: 'DIR', help: `the folder to keep things in; ${USUAL_FOLDER} unless said` },
    ground: { kind: 'text', value: 'FILE', many: true, help: 'mapped ground to open besides the made-up course' },
    player: { kind: 'text', value: 'FILE', many: true, help: 'a player to open besides the made-up ones' },
    port: { kind: 'text', value: 'N', help: `port to listen on, ${USUAL_PORT} unless said; 0 takes any free one` },
    workers: { kind: 'text', value: 'N', help: 'worker processes of a store on a server, 1 unless said' },
    bind: { kind: 'text', value: 'ADDRESS', help: 'an address to listen on instead of this machine’s own' },
    host: {
      kind: 'text',
      value: 'NAME',
      many: true,
      help: 'a name that is answered to, with its port if not the usual',
    },
    'tls-cert': { kind: 'text', value: 'FILE', help: 'the certificate, PEM' },
    'tls-key': { kind: 'text', value: 'FILE', help: 'its key, PEM' },
    'trusted-proxy': { kind: 'text', value: 'ADDRESS', help: 'the proxy that speaks TLS; nobody else may connect' },
  },
  run: runServe,
};

const MOST_WORKERS = 64;

async function runServe(given: Given, io: Io): Promise<number> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const port = parseWhole('port', given.text('port') ?? String(USUAL_PORT), [0, 65_535]);
  const workers = parseWhole('workers', given.text('workers') ?? '1', [0, MOST_WORKERS]);
  const way = await wayIn(given);
  if (way.value === undefined) return told(way.faults, io);
  const stocked = await stock(given, io);
  if (stocked === undefined) return 1;
  const noPort = (error: unknown): undefined => {
    if (!isSystemError(error)) throw error;
    io.err(`leeway serve: port ${port}: found ${portWords(error)}; expected a free port, or --port 0\n`);
  };
  // Opening the store and building the page take a while.
  const free = await tryPort(port, way.value.bind).then(() => true, noPort);
  if (free === undefined) return 1;
  const open = await openData(given, io, workers);
  if (open === 'refused') return 1;
  const keeping = open === undefined ? {} : { keeping: open.keeping };
  const served = { ...keeping, door: way.value.door, ...(way.value.tls === undefined ? {} : { tls: way.value.tls }) };
  const serving = await startOn(port, way.value.bind, stocked, served, io).catch(async (error: unknown) => {
    await open?.close();
    return noPort(error);
  });
  if (serving === undefined) return 1;
  io.out(
    given.flag('json') ? `${JSON.stringify({ address: serving.address })}\n` : `Leeway is at ${serving.address}\n`,
  );
  await interrupted();
  await serving.close();
  await open?.close();
  return 0;
}

/**
 * The store to serve. One that is named and cannot be opened is refused; the usual one, when another process has it, is left out: then whatever would be kept is
 * refused by what is served.
 */
async function openData(given: Given, io: Io, workers: number): Promise<OpenKeeping | undefined | 'refused'> {
  const tell = (line: string): void => io.err(`leeway serve: ${line}\n`);
  const named = given.text('data');
  const { value, faults } = await openKeeping(placeOf(named ?? USUAL_FOLDER), workers, tell);
  if (value !== undefined) return value;
  told(faults, io);
  if (named !== undefined || !faults.some(({ code }) => code === 'in-use')) return 'refused';
  tell('nothing is kept by this one; --data DIR names another folder');
  return undefined;
}

interface WayIn {
  readonly bind: string;
  readonly door: Door;
  readonly tls?: { readonly cert: string; readonly key: string };
}

/** Where to listen, and who may come in. Refused: an address that its door is not fit for. */
async function wayIn(given: Given): Promise<Read<WayIn>> {
  const bind = given.text('bind') ?? '127.0.0.1';
  const passphrase = process.env['LEEWAY_PASSPHRASE'];
  const [cert, key, trustedProxy] = [given.text('tls-cert'), given.text('tls-key'), given.text('trusted-proxy')];
  if ((cert === undefined) !== (key === undefined)) throw new Usage('--tls-cert and --tls-key go together');
  const door: Door = {
    hosts: given.texts('host'),
    ...(passphrase === undefined || passphrase === '' ? {} : { passphrase }),
    ...(cert === undefined && trustedProxy === undefined ? {} : { secure: true }),
    ...(trustedProxy === undefined ? {} : { trustedProxy }),
  };
  const faults = bindingFaults(bind, door, cert !== undefined);
  if (faults.length > 0) return { faults };
  if (cert === undefined || key === undefined) return { value: { bind, door }, faults };
  const [certText, keyText] = [
    await readTextCapped(cert, CAP_BYTES.player),
    await readTextCapped(key, CAP_BYTES.player),
  ];
  if (certText.value === undefined || keyText.value === undefined)
    return { faults: [...certText.faults, ...keyText.faults] };
  return { value: { bind, door, tls: { cert: certText.value, key: keyText.value } }, faults };
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

/** Builds what is not built yet, and listens. */
async function startOn(
  port: number,
  bind: string,
  stocked: StockedShelf,
  served: Omit<Served, 'page' | 'stocked'>,
  io: Io,
): Promise<Serving> {
  const tell = (line: string): void => io.err(`leeway serve: ${line}\n`);
  const page = await buildWeb(tell);
  const prepared = await withOpeningHole(stocked, page, tell);
  return listen(port, { page, stocked: prepared, ...served }, (error) => tell(messageOf(error)), bind);
}

const isSystemError = (error: unknown): boolean =>
  error instanceof Error && 'syscall' in error && error.syscall === 'listen';

function portWords(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'EADDRINUSE' ? 'it in use' : wordSystemError(error);
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
