import { receivedHole, type SentHole, type Shelf, type StoredRecord } from '@leeway/contract';
import { type HoleGround, type PlayerFile, readClub } from '@leeway/engine';
import { batch, computed, signal } from '@preact/signals';
import type { Done } from '../parts/Says.tsx';
import { got, newRecord, sent, today } from '../shell/api.ts';
import { doErrand } from '../shell/errand.ts';
import { tryingWith } from '../shell/trying.ts';
import { placedHole, type Reach } from './guessed.ts';
import type { KeptLedger } from './kept.ts';
import { reachesOf } from './reaches.ts';
import { keysOf, readTyped } from './typed.ts';
import { accountingWords, LEDGER } from './words.ts';

type Kept<K extends 'profile' | 'round' | 'ledger'> = StoredRecord<K>;

/** Rounds of one player: those that are kept, the one that is looked at, and one that is being entered. */
export class LedgerState {
  readonly owner: string;
  readonly profile = signal<Kept<'profile'> | undefined>(undefined);
  readonly rounds = signal<readonly Kept<'round'>[] | undefined>(undefined);
  readonly ledgers = signal<readonly Kept<'ledger'>[]>([]);
  readonly grounds = signal<Shelf['grounds']>([]);
  readonly chosen = signal<string | undefined>(undefined);
  readonly hole = signal<string | undefined>(undefined);
  readonly row = signal<string | undefined>(undefined);
  /** Holes of the courses that are on the page, by the course's id. */
  readonly holes = signal<ReadonlyMap<string, readonly HoleGround[]>>(new Map());
  readonly fault = signal<string | undefined>(undefined);
  private readonly trying = tryingWith(this.fault);
  readonly done = signal<Done | undefined>(undefined);
  readonly working = signal<string | undefined>(undefined);

  readonly entering = signal(false);
  readonly date = signal(today());
  readonly course = signal<string | undefined>(undefined);
  /** What is typed for each hole, by its number. */
  readonly typed = signal<{ readonly [hole: string]: string }>({});
  private readonly file = signal<PlayerFile | undefined>(undefined);
  readonly reaches = computed<readonly Reach[]>(() =>
    this.file.value === undefined ? [] : reachesOf(this.file.value),
  );
  readonly keys = computed(() =>
    keysOf(
      this.reaches.value.map(({ club }) => {
        const kind = readClub(club);
        const number = Number(kind?.key.split(' ')[1]);
        return {
          name: club,
          family: kind?.family ?? 'other',
          ...(number > 0 && kind?.family !== 'wedge' ? { number } : {}),
        };
      }),
    ),
  );

  readonly round = computed(() => this.rounds.value?.find(({ id }) => id === this.chosen.value));
  readonly ledger = computed(() => this.ledgerOf(this.chosen.value));
  readonly roundHoles = computed(() => this.holes.value.get(this.round.value?.body.course ?? '') ?? []);
  readonly enteredHoles = computed(() => this.holes.value.get(this.course.value ?? '') ?? []);
  readonly read = computed(() =>
    this.enteredHoles.value.map((ground) => ({
      ground,
      typed: readTyped(this.typed.value[ground.hole] ?? '', this.keys.value),
    })),
  );

  constructor(owner: string) {
    this.owner = owner;
  }

  /** The newest account of a round. */
  ledgerOf(round: string | undefined): KeptLedger | undefined {
    return this.ledgers.value.findLast(({ body }) => body.round === round)?.body.ledger;
  }

  async load(): Promise<void> {
    await this.trying(async () => {
      const of = <T>(path: string) => got<T>(`/api/players/${this.owner}/${path}`);
      const [profiles, rounds, ledgers, file, shelf] = await Promise.all([
        of<{ records: readonly Kept<'profile'>[] }>('profiles'),
        of<{ records: readonly Kept<'round'>[] }>('rounds'),
        of<{ records: readonly Kept<'ledger'>[] }>('ledgers'),
        of<PlayerFile>('file'),
        got<Shelf>('/api/shelf'),
      ]);
      batch(() => {
        this.profile.value = profiles.records.at(-1);
        this.rounds.value = rounds.records.toSorted((a, b) => (a.body.date < b.body.date ? 1 : -1));
        this.ledgers.value = ledgers.records;
        this.file.value = file;
        this.grounds.value = shelf.grounds.filter(({ kept }) => kept === true);
        this.chosen.value ??= this.rounds.value[0]?.id;
        this.course.value ??= this.grounds.value[0]?.id;
      });
      await Promise.all([this.fetchHoles(this.round.value?.body.course), this.fetchHoles(this.course.value)]);
    });
  }

  choose(round: string): void {
    batch(() => {
      this.chosen.value = round;
      this.hole.value = undefined;
      this.row.value = undefined;
    });
    void this.trying(() => this.fetchHoles(this.round.value?.body.course));
  }

  chooseCourse(id: string): void {
    this.course.value = id;
    void this.trying(() => this.fetchHoles(id));
  }

  type(hole: string, text: string): void {
    this.typed.value = { ...this.typed.value, [hole]: text };
  }

  /** Keeps what is typed as a round, and has it accounted for. Holes that are not whole are left out. */
  async keep(): Promise<void> {
    const course = this.course.value;
    const holes = this.read.value.filter(({ typed }) => typed.whole);
    if (course === undefined || holes.length === 0) return;
    await this.trying(async () => {
      const round = newRecord({ date: this.date.value, course });
      const strokes = holes.flatMap(({ ground, typed }) =>
        placedHole(ground, typed, this.reaches.value).map((stroke, i) => {
          const { from, finish, club, lie, penaltyStrokes } = stroke;
          return newRecord({
            round: round.id,
            hole: ground.hole,
            shot: i + 1,
            from: ground.frame.toGeo(from),
            lie,
            ...(club === undefined ? {} : { club }),
            ...(finish === 'holed' ? { holed: true } : { finish: ground.frame.toGeo(finish) }),
            ...(penaltyStrokes > 0 ? { penaltyStrokes } : {}),
          });
        }),
      );
      await sent(`/api/players/${this.owner}/rounds`, { records: [round] });
      await sent(`/api/players/${this.owner}/strokes`, { records: strokes });
      batch(() => {
        this.entering.value = false;
        this.typed.value = {};
        this.chosen.value = round.id;
        this.done.value = { words: LEDGER.kept };
      });
      await this.load();
      await this.account();
    });
  }

  /** Has the chosen round accounted for, and follows that. */
  async account(): Promise<void> {
    const round = this.chosen.value;
    if (round === undefined) return;
    await this.trying(async () => {
      const standing = await doErrand(this.owner, { task: 'ledger', round }, (now) => {
        this.working.value = accountingWords(now);
      });
      if (standing.state === 'failed') this.fault.value = LEDGER.failed;
      this.done.value = undefined;
      await this.load();
    });
    this.working.value = undefined;
  }

  private async fetchHoles(course: string | undefined): Promise<void> {
    const ground = this.grounds.value.find(({ id }) => id === course);
    if (ground === undefined || this.holes.value.has(ground.id)) return;
    const holes = await Promise.all(ground.holes.map(async ({ url }) => receivedHole(await got<SentHole>(url))));
    this.holes.value = new Map([...this.holes.value, [ground.id, holes]]);
  }
}
