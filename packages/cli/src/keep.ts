import { type Fault, dateSchema, type Read } from '@leeway/contract';
import { plainHeading } from '@leeway/formats';
import type { Store } from '@leeway/store';
import { mapOf } from './carriesInput.ts';
import { checkBytes } from './checkBytes.ts';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { DATA_OPTION, isFault, playerNamed, refusal, told, withStore } from './data.ts';
import { CAP_BYTES, readBytesCapped } from './files.ts';
import { UNITS_OPTION, unitsOf } from './quantities.ts';

/** `leeway keep`: files into the store, each shown first. */
export const keep: Command = {
  name: 'keep',
  summary: 'take files of players, shots and ground into a store, each after it was shown and approved',
  usage: [
    'leeway keep FILE… --data DIR [--player NAME] [--date YYYY-MM-DD] [--units yd|m] [--map "HEADING=COLUMN"] [--yes]',
  ],
  examples: [
    'leeway keep course.osm kim.json --data ~/.leeway',
    'leeway keep may.csv --data ~/.leeway --player "Kim Aster" --date 2026-05-14',
  ],
  options: {
    data: DATA_OPTION,
    player: { kind: 'text', value: 'NAME', help: 'whose shots these are' },
    date: { kind: 'text', value: 'YYYY-MM-DD', help: 'the day of shots whose rows have none; today unless said' },
    name: { kind: 'text', value: 'NAME', help: 'whose shots to take of a file with several players’' },
    units: { ...UNITS_OPTION, help: 'of columns that do not say: yards (default) or metres' },
    map: {
      kind: 'text',
      value: '"HEADING=COLUMN"',
      many: true,
      help: 'what a heading means; remembered for such files',
    },
    yes: { kind: 'flag', help: 'keep without asking' },
  },
  run: runKeep,
};

async function runKeep(given: Given, io: Io): Promise<number> {
  if (given.words.length === 0) throw new Usage('name a file to keep');
  if (!given.flag('yes') && io.ask === undefined)
    throw new Usage('nobody can be asked here: --yes keeps without asking');
  return withStore(given, io, async (store) => {
    let code = 0;
    for (const file of given.words) code = Math.max(code, await keepOne(given, io, store, file));
    return code;
  });
}

async function keepOne(given: Given, io: Io, store: Store, file: string): Promise<number> {
  const bytes = await readBytesCapped(file, Math.max(...Object.values(CAP_BYTES)));
  if (bytes.value === undefined) return told(bytes.faults, io);
  const looked = await look(given, store, file, bytes.value);
  const code = told(looked.faults, io);
  if (looked.value === undefined) return Math.max(code, 1);
  io.err(`${file}: ${looked.value.holds}\n`);
  const answer = given.flag('yes') ? 'y' : ((await io.ask?.('Keep it? [y/N] ')) ?? '');
  if (!/^y(?:es)?$/i.test(answer.trim())) {
    io.err(`${file}: not kept\n`);
    return 0;
  }
  const kept = await looked.value.keep();
  if (kept.value === undefined) return told(kept.faults, io);
  io.out(given.flag('json') ? `${JSON.stringify({ file, kept: kept.value })}\n` : `${file}: ${kept.value}\n`);
  return 0;
}

/** A file that was looked at: what it holds, and how to keep it, which gives what was kept in a few words. */
interface Looked {
  readonly holds: string;
  keep(): Promise<Read<string>>;
}

const RECORD = /^\s*\{"format":"leeway player record"/;

async function look(given: Given, store: Store, file: string, bytes: Uint8Array): Promise<Read<Looked>> {
  const server = await import('@leeway/server');
  if (RECORD.test(Buffer.from(bytes.subarray(0, 100)).toString('latin1'))) {
    const { importPlayer } = await import('@leeway/store');
    const text = Buffer.from(bytes).toString('utf8');
    return found('one player’s whole record', async () => {
      const { value, faults } = await importPlayer(store, text, file);
      return value === undefined
        ? { faults }
        : said(`${value.filter(({ outcome }) => outcome === 'stored').length} records kept`);
    });
  }
  const { kind, holds = '', faults } = checkBytes(bytes, file);
  switch (kind) {
    case 'player':
      if (faults.some(isRefused)) return { faults };
      return found(`a player: ${holds}`, async () => {
        const { value, faults: refused } = await server.keepPlayerFile(store, bytes, file);
        return value === undefined ? { faults: refused } : said('the player is kept');
      });
    case 'ground': {
      const { value, faults: refused } = server.readGroundFile(bytes, file);
      if (value === undefined) return { faults: refused };
      return found(`a course: ${holds}`, async () => {
        const { value: kept, faults: late } = await server.keepGroundFile(store, bytes, file, value.seen);
        return kept === undefined
          ? { faults: late }
          : said(kept.kept?.already === true ? 'was kept already' : `${kept.course} is kept`);
      });
    }
    case 'shot':
      return lookAtShots(given, store, file, bytes);
    default:
      return { faults };
  }
}

async function lookAtShots(given: Given, store: Store, file: string, bytes: Uint8Array): Promise<Read<Looked>> {
  const name = given.text('player');
  if (name === undefined) throw new Usage(`${file} holds shots: --player NAME says whose`);
  const date = given.text('date') ?? new Date().toISOString().slice(0, 10);
  if (!dateSchema.safeParse(date).success) throw new Usage(`--date: found "${date}"; expected YYYY-MM-DD`);
  const player = await playerNamed(store, name);
  if (isFault(player)) return { faults: [player] };
  const server = await import('@leeway/server');
  const { headingMap, of } = { headingMap: mapOf(given.texts('map')), of: given.text('name') };
  const asked = { owner: player.profile.owner, file, bytes, date, purpose: 'range' as const, units: unitsOf(given) };
  const first = await server.readShotFile(store, asked);
  if (first.value === undefined) return { faults: first.faults };
  const how =
    headingMap.size === 0 && of === undefined && given.text('units') === undefined
      ? undefined
      : mapped(first.value, headingMap);
  const reading =
    how === undefined ? {} : { reading: { ...how, units: unitsOf(given), ...(of === undefined ? {} : { of }) } };
  const { value, faults } = how === undefined ? first : await server.readShotFile(store, { ...asked, ...reading });
  if (value === undefined) return { faults };
  if (value.sessions.length === 0)
    return { faults: value.faults.length > 0 ? value.faults : [refusal('no-shots', file, 'no shots', 'shots')] };
  const days = value.sessions.map((session) => `${session.shots} balls of ${session.date}`).join(', ');
  const looked = found(
    `${player.profile.body.name}: ${days}${value.remembered ? '; read as such files were last' : ''}`,
    async () => {
      const kept = await server.keepShotFile(store, { ...asked, ...reading }, value.seen);
      if (kept.value === undefined) return { faults: kept.faults };
      return said(kept.value.kept?.already === true ? 'was kept already' : `${kept.value.kept?.shots ?? 0} balls kept`);
    },
  );
  return { ...looked, faults: value.faults };
}

/** The file's headings as they were read, but for those that the map says. */
function mapped(
  { headings }: { readonly headings: readonly { text: string; meaning: string | null }[] },
  map: ReturnType<typeof mapOf>,
) {
  const meanings = headings.map(({ text, meaning }) => map.get(plainHeading(text)) ?? meaning ?? 'ignore');
  return { meanings: meanings as never[] };
}

const found = (holds: string, keepIt: () => Promise<Read<string>>): Read<Looked> => ({
  value: { holds, keep: keepIt },
  faults: [],
});
const said = (words: string): Read<string> => ({ value: words, faults: [] });
const isRefused = ({ level }: Fault): boolean => level === 'refused';
