import {
  type Fault,
  readPlayer,
  SHOT_COLUMNS,
  type ShotColumn,
  type ShotReading,
  type ShotRow,
  wordFault,
} from '@leeway/contract';
import { handicapIndexOf, type PlayerFile, type SwingBalls } from '@leeway/engine';
import {
  type Approach,
  approachNotes,
  groupShots,
  oddSessions,
  plainHeading,
  readApproaches,
  readShots,
  shotsOfOne,
  withoutRepeatedSessions,
} from '@leeway/formats';
import type { Given, Io } from './command.ts';
import { Usage } from './command.ts';
import { isFault, playerNamed, refusal, told, withStore } from './data.ts';
import { CAP_BYTES, readBytesCapped, readTextCapped } from './files.ts';
import { nearest } from './nearest.ts';
import { parseNumber, type Units, unitsOf } from './quantities.ts';

/** What a table of carries is made from. */
export interface CarriesInput {
  readonly units: Units;
  /** The player as known before these shots. */
  readonly player: PlayerFile;
  readonly swings: readonly SwingBalls[];
  readonly faults: readonly Fault[];
}

const MOST_TOLD = 40;
const MOST_CLUBS = 40;

/** Reads the shots and the player; `undefined` when something was refused, which has been told. Throws `Usage`. */
export async function readCarriesInput(given: Given, io: Io): Promise<CarriesInput | undefined> {
  const units = unitsOf(given);
  const reading: ShotReading = { units, map: mapOf(given.texts('map')) };
  const index = given.text('handicap');
  const handicapIndex = index === undefined ? undefined : parseNumber('handicap', index, [-10, 54]);
  if (given.text('data') !== undefined) return storedInput(given, io, units, handicapIndex);
  if (given.words.length === 0 && given.texts('approaches').length === 0)
    throw new Usage('name a file of shots, or --approaches FILE');
  const faults: Fault[] = [];
  const player = await playerOf(given, handicapIndex, faults);
  const rows: ShotRow[] = [];
  for (const file of given.words) {
    const bytes = await readBytesCapped(file, CAP_BYTES.shots);
    faults.push(...bytes.faults);
    if (bytes.value === undefined) continue;
    const read = readShots(bytes.value, file, reading);
    faults.push(...read.faults);
    for (const row of read.value ?? []) rows.push(row);
  }
  const sessions = withoutRepeatedSessions(rows);
  const chosen = shotsOfOne(sessions.rows, given.text('name'));
  const marks: Approach[] = [];
  for (const file of given.texts('approaches')) {
    const bytes = await readBytesCapped(file, CAP_BYTES.shots);
    const read = bytes.value === undefined ? undefined : readApproaches(bytes.value, file, units);
    faults.push(...bytes.faults, ...(read?.faults ?? []));
    marks.push(...(read?.value ?? []));
  }
  const allLogged = given.flag('all-logged');
  const grouped = groupShots(chosen.rows, player.clubs ?? [], { rows: marks, allLogged });
  faults.push(
    ...approachNotes(marks, allLogged),
    ...sessions.faults,
    ...chosen.faults,
    ...oddSessions(chosen.rows),
    ...grouped.faults,
    ...tooManyClubs(grouped.swings, given.words[0] ?? ''),
  );
  tell(faults, io);
  return faults.some((f) => f.level === 'refused') ? undefined : { units, player, swings: grouped.swings, faults };
}

/** What is kept of a player: the profile, and every shot that stands. */
async function storedInput(
  given: Given,
  io: Io,
  units: Units,
  handicapIndex: number | undefined,
): Promise<CarriesInput | undefined> {
  const name = given.text('player');
  if (name === undefined) throw new Usage('--data needs --player NAME: whose shots');
  if (given.words.length > 0)
    throw new Usage('the shots come from files or from --data, not both; leeway keep takes files in');
  let input: CarriesInput | undefined;
  const code = await withStore(given, io, async (store) => {
    const { ballOf, playerFileOf, standingShots } = await import('@leeway/server');
    const found = await playerNamed(store, name);
    if (isFault(found)) return told([found], io);
    const { owner, body } = found.profile;
    const { sessions, shots } = await standingShots(store, owner);
    const rows = shots.map((shot, i): ShotRow => ({
      file: 'the store',
      line: i + 1,
      ...ballOf(shot.body, sessions.get(shot.body.session)?.body),
    }));
    if (rows.length === 0)
      return told([refusal('no-shots', body.name, 'no shots', 'shots: leeway keep takes files in')], io);
    const player = { ...playerFileOf(body), ...(handicapIndex === undefined ? {} : { handicapIndex }) };
    const grouped = groupShots(rows, player.clubs ?? []);
    const faults = [...grouped.faults, ...tooManyClubs(grouped.swings, body.name)];
    input = { units, player, swings: grouped.swings, faults };
    return told(faults, io);
  });
  return code === 0 ? input : undefined;
}

async function playerOf(given: Given, handicapIndex: number | undefined, faults: Fault[]): Promise<PlayerFile> {
  const path = given.text('player');
  const name = given.text('name');
  const asked = { ...(name === undefined ? {} : { name }), ...(handicapIndex === undefined ? {} : { handicapIndex }) };
  let player: PlayerFile = { version: 1, name: 'Player', ...asked };
  if (path !== undefined) {
    const text = await readTextCapped(path, CAP_BYTES.player);
    const read = text.value === undefined ? undefined : readPlayer(text.value, path);
    faults.push(...text.faults, ...(read?.faults ?? []));
    if (read?.value !== undefined) player = { ...read.value, ...asked };
  }
  if (player.handicapIndex === undefined)
    faults.push({
      code: 'assumed-handicap',
      level: 'note',
      file: path ?? given.words[0] ?? '',
      found: 'no handicap',
      expected: '--handicap N, or handicapIndex in the Player file',
      done: `${handicapIndexOf(player)} is assumed`,
    });
  return player;
}

/** `--map "HEADING=COLUMN"`, several. Throws `Usage` for a column that there is not. */
export function mapOf(texts: readonly string[]): ReadonlyMap<string, ShotColumn | 'ignore'> {
  const map = new Map<string, ShotColumn | 'ignore'>();
  for (const text of texts) {
    const at = text.lastIndexOf('=');
    const heading = plainHeading(text.slice(0, Math.max(0, at)));
    const word = text
      .slice(at + 1)
      .trim()
      .toLowerCase();
    const columns: readonly (ShotColumn | 'ignore')[] = [...SHOT_COLUMNS, 'ignore'];
    const column = columns.find((c) => c === word);
    if (at < 1 || heading === '') throw new Usage(`--map: found "${text}"; expected "HEADING=COLUMN"`);
    if (column === undefined) {
      const near = nearest(word, columns);
      throw new Usage(
        `--map: no column "${word}"; ${near === undefined ? `there are ${columns.join(', ')}` : `did you mean ${near}?`}`,
      );
    }
    map.set(heading, column);
  }
  return map;
}

function tooManyClubs(swings: readonly SwingBalls[], file: string): readonly Fault[] {
  const clubs = new Set(swings.map((s) => s.club)).size;
  if (clubs <= MOST_CLUBS && swings.length <= 8 * MOST_CLUBS) return [];
  const found = `${clubs} clubs and ${swings.length} swings`;
  return [
    {
      code: 'too-many-clubs',
      level: 'refused',
      file,
      found,
      expected: `at most ${MOST_CLUBS} clubs and ${8 * MOST_CLUBS} swings`,
    },
  ];
}

/** Faults in lines: all that were refused, then the first others, then a count by code of the rest. */
export function tell(faults: readonly Fault[], io: Io): void {
  const refused = faults.filter((f) => f.level === 'refused');
  const others = faults.filter((f) => f.level !== 'refused');
  for (const fault of [...refused, ...others.slice(0, MOST_TOLD)]) io.err(`${wordFault(fault)}\n`);
  const rest = new Map<string, number>();
  for (const fault of others.slice(MOST_TOLD)) rest.set(fault.code, (rest.get(fault.code) ?? 0) + 1);
  if (rest.size > 0)
    io.err(`and ${[...rest].map(([code, n]) => `${n} more of [${code}]`).join(', ')}; --json lists all\n`);
}
