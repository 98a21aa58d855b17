import {
  dateSchema,
  type Fault,
  newRecord,
  type Read,
  type RecordInput,
  type Session,
  type ShotFile,
  type ShotFileReading,
  type ShotRow,
} from '@leeway/contract';
import { playersIn, readShots, type ShotTable, shotsOfOne, shotTable, withoutRepeatedSessions } from '@leeway/formats';
import { current, derivedId, get, history, put, type Store } from '@leeway/store';
import { digestOf } from './digest.ts';
import { mapOf, readingToKeep, rememberedReading } from './readings.ts';

/** A file of shots, whose they are, and what is said of the session beside it. */
export interface ShotFileAsked {
  readonly owner: string;
  readonly file: string;
  readonly bytes: Uint8Array;
  /** Of shots whose row has no date that can be read. */
  readonly date: string;
  readonly purpose: Session['purpose'];
  readonly ball?: 'range' | 'own';
  /** As remembered for such headings unless said, else as the reader makes it out, in these units. */
  readonly reading?: ShotFileReading;
  readonly units: 'yd' | 'm';
}

const ROWS_SHOWN = 20;
const MOST_FAULTS = 500;
const FARTHEST_SIDE_M = 300;

/**
 * Reads a file of shots for a player, to be looked at. Faults stand in the answer, row by row, since a file that cannot be kept yet is to be mapped; then there
 * are no sessions. Refused: what is no table.
 */
export async function readShotFile(store: Store, asked: ShotFileAsked): Promise<Read<ShotFile>> {
  const { value, faults } = await readWhole(store, asked);
  return value === undefined ? { faults } : { value: value.shown, faults: [] };
}

/** Keeps a file as it was seen. Refused: one that reads otherwise now than when it was looked at, and one without sessions. Kept again it is harmless. */
export async function keepShotFile(store: Store, asked: ShotFileAsked, seen: string): Promise<Read<ShotFile>> {
  const { value, faults } = await readWhole(store, asked);
  if (value === undefined) return { faults };
  const { shown, sessions } = value;
  if (shown.seen !== seen)
    return refuse(
      asked.file,
      'not-as-seen',
      'a file that reads otherwise than when it was looked at',
      'the file and reading that were looked at',
    );
  if (sessions.length === 0) return { faults: shown.faults };
  const fresh: ReadSession[] = [];
  for (const session of sessions) if ((await get(store, asked.owner, session.id)) === undefined) fresh.push(session);
  const madeAt = new Date().toISOString();
  const records = fresh.flatMap((session) => recordsOf(session, asked, value, madeAt));
  const stored = await put(store, [...records, ...(await readingToKeep(store, shown))]);
  if (stored.value === undefined) return { faults: stored.faults };
  const kept = { sessions: fresh.length, shots: records.length - fresh.length, already: fresh.length === 0 };
  return { value: { ...shown, kept }, faults: [] };
}

interface ReadSession {
  readonly id: string;
  readonly date: string;
  readonly rows: readonly ShotRow[];
}

interface ReadWhole {
  readonly shown: ShotFile;
  readonly table: ShotTable;
  readonly sessions: readonly ReadSession[];
}

async function readWhole(store: Store, asked: ShotFileAsked): Promise<Read<ReadWhole>> {
  const { file, bytes, owner } = asked;
  const bare = shotTable(bytes, file, { units: asked.units });
  if (bare.value === undefined) return { faults: bare.faults };
  const last = await rememberedReading(store, shownHeadings(bare.value));
  const reading: ShotFileReading =
    asked.reading ??
    (last === undefined ? { units: asked.units } : { units: last.body.units, meanings: last.body.meanings });
  const how = { units: reading.units, map: mapOf(bare.value.headings, reading.meanings) };
  const table = shotTable(bytes, file, how).value ?? bare.value;
  const read = readShots(bytes, file, how);
  const { rows: sound, faults: sideways } = withinSide(read.value ?? []);
  const single = withoutRepeatedSessions(sound);
  const own = shotsOfOne(single.rows, reading.of);
  const faults = [...read.faults, ...sideways, ...single.faults, ...own.faults];
  const refused = faults.some(({ level }) => level === 'refused');
  // What the headings were taken for in the end, however that came about: read again and again, the same balls are the same records.
  const headings = shownHeadings(table);
  const taken = JSON.stringify([headings.map(({ meaning }) => meaning ?? 'ignore'), reading.units, reading.of ?? '']);
  const print = [digestOf(bytes), taken];
  const sessions: ReadSession[] = [];
  if (!refused)
    for (const [date, rows] of byDate(own.rows, asked.date))
      sessions.push({ id: await sessionId(store, owner, [...print, date]), date, rows });
  const before = await sessionsLike(store, asked, sessions);
  const shown: ShotFile = {
    headings,
    reading,
    remembered: asked.reading === undefined && last !== undefined,
    players: [...playersIn(sound)],
    sessions: sessions.map(({ id, date, rows }) => ({ id, date, shots: rows.length })),
    first: own.rows.slice(0, ROWS_SHOWN).map(({ line, club, swing, carryM, sideM }) => ({
      line,
      cells: [...(table.cells.get(line) ?? [])],
      club,
      swing,
      carryM,
      ...(sideM === undefined ? {} : { sideM }),
    })),
    faults: [...before, ...faults].slice(0, MOST_FAULTS),
    seen: digestOf(JSON.stringify([owner, file, asked.date, asked.purpose, asked.ball ?? '', ...print])),
  };
  return { value: { shown, table, sessions }, faults: [] };
}

const shownHeadings = ({ headings }: ShotTable): ShotFile['headings'] =>
  headings.map(({ text, meaning, unitGiven }) => ({
    text,
    meaning: meaning.kind === 'column' ? meaning.column : meaning.kind === 'unused' ? 'ignore' : null,
    unitGiven,
  }));

/** A side that no ball has gone to is another unit or column; the store takes none such. */
function withinSide(rows: readonly ShotRow[]): {
  readonly rows: readonly ShotRow[];
  readonly faults: readonly Fault[];
} {
  const strange = ({ sideM = 0 }: ShotRow): boolean => Math.abs(sideM) > FARTHEST_SIDE_M;
  const faults = rows.filter(strange).map(({ file, line, sideM = 0 }): Fault => ({
    code: 'side-range',
    level: 'left out',
    file,
    line,
    found: `a side of ${Math.round(sideM)} m`,
    expected: `at most ${FARTHEST_SIDE_M} m to either side`,
    done: 'the row is left out',
  }));
  return { rows: rows.filter((row) => !strange(row)), faults };
}

/** The same balls of a day have the same id however often they are read, until they were taken back: then they may come in anew. */
async function sessionId(store: Store, owner: string, print: readonly string[]): Promise<string> {
  for (let time = 0; ; time++) {
    const id = derivedId(owner, ...print, String(time));
    const takenBack = (await history(store, owner, id)).some(({ kind }) => kind === 'withdrawal');
    if (!takenBack) return id;
  }
}

/** Sessions that are kept of a file of this name and these days, read otherwise: one of the two should go, or every ball counts twice. */
async function sessionsLike(
  store: Store,
  { owner, file }: ShotFileAsked,
  sessions: readonly ReadSession[],
): Promise<readonly Fault[]> {
  if (sessions.length === 0) return [];
  const kept = await current(store, { owner, kind: 'session' });
  const like = kept.filter(
    ({ id, body }) =>
      body.source?.file === file.slice(0, 255) && sessions.some((s) => s.date === body.date && s.id !== id),
  );
  return like.map(({ body }): Fault => ({
    code: 'session-known',
    level: 'note',
    file,
    found: `a session of ${body.date} that is kept from a file of this name`,
    expected: 'each ball once',
    done: 'kept beside it: withdraw the other if this takes its place',
  }));
}

/** A session a day, where rows begin with a date of the calendar; the rest are of the day that is said. */
function byDate(rows: readonly ShotRow[], said: string): readonly (readonly [string, readonly ShotRow[]])[] {
  const dateOf = ({ date = '' }: ShotRow): string => dateSchema.safeParse(date.slice(0, 10)).data ?? said;
  return [...Map.groupBy(rows, dateOf)].toSorted(([a], [b]) => (a < b ? -1 : 1));
}

/** A session's record and its shots', under ids that follow from the session's. */
function recordsOf(
  { id, date, rows }: ReadSession,
  { owner, file, purpose, ball }: ShotFileAsked,
  { shown, table }: ReadWhole,
  madeAt: string,
): readonly RecordInput[] {
  const source = {
    file: file.slice(0, 255),
    headings: shown.headings.map(({ text }) => text.slice(0, 200)),
    meanings: shown.headings.map(({ meaning }) => meaning ?? ('ignore' as const)),
    units: shown.reading.units,
  };
  const session: Session = { date, purpose, ...(ball === undefined ? {} : { ball }), source };
  return [
    newRecord('session', { owner, id, madeAt, body: session }),
    ...rows.map((row, i) =>
      newRecord('shot', { owner, id: derivedId(id, String(i)), madeAt, body: shotOf(id, row, table) }),
    ),
  ];
}

/** What stands in fields of its own is not kept among the readings again, nor whose shot it is. */
const ELSEWHERE = new Set(['carry', 'side', 'swing', 'player', 'date']);

function shotOf(session: string, { line, club, swing, carryM, sideM, readings }: ShotRow, { cells }: ShotTable) {
  const others = Object.entries(readings).filter(([column]) => !ELSEWHERE.has(column));
  const kept = others.map(([column, value]) => [column, typeof value === 'string' ? value.slice(0, 200) : value]);
  return {
    session,
    club: club.trim(),
    swing: swing.trim(),
    carryM,
    ...(sideM === undefined ? {} : { sideM }),
    ...(kept.length === 0 ? {} : { readings: Object.fromEntries(kept) as object }),
    raw: { line, cells: (cells.get(line) ?? []).map((cell) => cell.slice(0, 1000)) },
  };
}

function refuse(file: string, code: string, found: string, expected: string): { readonly faults: readonly Fault[] } {
  return { faults: [{ code, level: 'refused', file, found, expected }] };
}
