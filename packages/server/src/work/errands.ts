import { type Errand, type Fault, HOUSE, newRecord, type Read, type StoredRecord, wordFault } from '@leeway/contract';
import { CALM, type Day, REFERENCE, YARD_M } from '@leeway/engine';
import { derivedId, get, type JobQueue, noteProgress, put, type RunningJob, type Store } from '@leeway/store';
import { inThread } from './inThread.ts';
import type { RoundAsked } from './planHoles.ts';
import { sessionsOf, standingShots } from './standingShots.ts';
import { storedRound } from './storedRound.ts';
import { ballOf, playerFileOf, storedPlayer } from './storedPlayer.ts';

const TASKS: readonly Errand['task'][] = ['fit', 'plan', 'ledger'];

/** The record that comes of an errand: its id follows from the errand's, so that done twice it is stored once. */
export const resultOf = (errand: string): string => derivedId(errand, 'result');

/** Does the errands of a store here, one of each task at a time. `told` hears of those that cannot be done. */
export async function doErrands(store: Store, queue: JobQueue, told: (line: string) => void): Promise<void> {
  for (const task of TASKS)
    await queue.work(task, 1, async (job) => {
      for (const fault of await doErrand(store, job)) told(wordFault(fault));
    });
}

/** Does one errand and stores what comes of it; the faults when it cannot be done, now or ever. */
async function doErrand(store: Store, job: RunningJob): Promise<readonly Fault[]> {
  const { owner } = job;
  const record = (await get(store, owner, job.id)) as StoredRecord<'errand'> | undefined;
  if (record === undefined || (await get(store, owner, resultOf(job.id))) !== undefined) return [];
  const { body } = record;
  const { value, faults } = await DO[body.task](store, job, record.madeAt, body as never);
  return value === undefined ? faults : (await put(store, [value])).faults;
}

const DO: {
  readonly [T in Errand['task']]: (
    store: Store,
    job: RunningJob,
    madeAt: string,
    asked: never,
  ) => Promise<Read<object>>;
} = {
  fit,
  plan,
  ledger,
};

const noPlayer = {
  faults: [refused('a player without profile, or without the patterns asked for', 'a player who is kept')],
};

async function fit(store: Store, { id, owner, signal }: RunningJob, madeAt: string): Promise<Read<object>> {
  const player = await storedPlayer(store, owner);
  if (player === undefined) return noPlayer;
  const { sessions, shots, approaches } = await standingShots(store, owner);
  const balls = shots.map(({ body }) => ballOf(body, sessions.get(body.session)?.body));
  const { value, faults } = await inThread(
    { task: 'fit', player: playerFileOf(player.profile.body), balls, approaches: approaches.map(({ body }) => body) },
    signal,
    () => undefined,
  );
  if (value === undefined) return { faults };
  const from = {
    profile: player.profile.id,
    sessions: sessionsOf({ sessions, shots }),
    shots: [...shots, ...approaches].map(({ id: used }) => used),
    model: 'two-part',
  };
  const body = { patterns: [...value.patterns], from, ladder: value.ladder };
  return { value: newRecord('fitted', { owner, id: resultOf(id), madeAt, body: body as never }), faults: [] };
}

type PlanErrand = Extract<Errand, { task: 'plan' }>;

async function plan(
  store: Store,
  { id, owner, signal }: RunningJob,
  madeAt: string,
  asked: PlanErrand,
): Promise<Read<object>> {
  const player = await storedPlayer(store, owner, asked.fitted);
  if (player === undefined) return noPlayer;
  const course = (await get(store, HOUSE, asked.course)) as StoredRecord<'course'> | undefined;
  const setUp =
    asked.setUp === undefined
      ? undefined
      : ((await get(store, HOUSE, asked.setUp)) as StoredRecord<'setUp'> | undefined);
  if (course?.kind !== 'course' || (asked.setUp !== undefined && setUp?.kind !== 'setUp'))
    return { faults: [refused('a course or set-up that is not there', 'a course and a set-up that are kept')] };
  const { name, ground } = course.body;
  const round = {
    ground,
    course: name,
    player: player.file,
    day: dayOf(setUp),
    flags: flagsOf(setUp),
    ...(asked.holes === undefined ? {} : { holes: asked.holes }),
  };
  const progress = noting(store, id, owner);
  const { value, faults } = await inThread({ task: 'plan', asked: round }, signal, progress.note);
  await progress.noted();
  if (value === undefined) return { faults };
  const { date, setUp: of } = asked;
  const made = {
    date,
    course: course.id,
    ...(of === undefined ? {} : { setUp: of }),
    ...(player.fitted === undefined ? {} : { fitted: player.fitted.id }),
    plan: value,
  };
  return { value: newRecord('plan', { owner, id: resultOf(id), madeAt, body: made }), faults: [] };
}

type LedgerErrand = Extract<Errand, { task: 'ledger' }>;

async function ledger(
  store: Store,
  { id, owner, signal }: RunningJob,
  madeAt: string,
  asked: LedgerErrand,
): Promise<Read<object>> {
  const player = await storedPlayer(store, owner);
  if (player === undefined) return noPlayer;
  const round = await storedRound(store, owner, asked.round);
  if (round === undefined)
    return { faults: [refused('a round that is not there, or without a course or strokes', 'a round with all three')] };
  const { strokes, file, course } = round;
  const progress = noting(store, id, owner);
  const work = { task: 'ledger', asked: { ground: course.ground, player: player.file, round: file } } as const;
  const { value, faults } = await inThread(work, signal, progress.note);
  await progress.noted();
  if (value === undefined) return { faults };
  const body = {
    round: asked.round,
    strokes: [...strokes],
    ...(player.fitted === undefined ? {} : { fitted: player.fitted.id }),
    ledger: value,
  };
  return { value: newRecord('ledger', { owner, id: resultOf(id), madeAt, body }), faults: [] };
}

/** Notes how far work is, one note after the other. */
function noting(store: Store, id: string, owner: string) {
  let last = Promise.resolve();
  return {
    note: (done: number, total: number): void => {
      const before = last;
      last = (async () => {
        await before;
        await noteProgress(store, id, owner, { done: Math.floor(done), total });
      })();
    },
    noted: () => last,
  };
}

/** The day as it is set up; what is not said is the reference day's. */
function dayOf(setUp: StoredRecord<'setUp'> | undefined): Day {
  const { day = {}, firmness, greenSpeedM } = setUp?.body ?? {};
  return {
    ...REFERENCE,
    temperatureC: day.temperatureC ?? REFERENCE.temperatureC,
    stationHpa: day.pressureHpa ?? REFERENCE.stationHpa,
    humidityPercent: day.humidityPercent ?? REFERENCE.humidityPercent,
    wind: { ...CALM, speedMps: day.windMps ?? 0, fromDeg: day.windFromDeg ?? 0 },
    ground: {
      ...(firmness === undefined ? {} : { firmness }),
      ...(greenSpeedM === undefined ? {} : { greenSpeedM }),
    },
  };
}

/** Flags by hole. A set-up places them on the green; a place told from the flag would be told from another day's. */
const flagsOf = (setUp: StoredRecord<'setUp'> | undefined): RoundAsked['flags'] =>
  (setUp?.body.flags ?? []).flatMap(({ hole, at }): RoundAsked['flags'] => {
    if ('lon' in at) return [{ hole, at: { kind: 'place', at } }];
    if (!('onFromFrontM' in at)) return [];
    return [{ hole, at: { kind: 'paces', on: at.onFromFrontM / YARD_M, in: at.inFromRightM / YARD_M, side: 'R' } }];
  });

function refused(found: string, expected: string): Fault {
  return { code: 'cannot-do', level: 'refused', file: 'errand', found, expected };
}
