import type { Approach, LadderData, Profile, Session, StoredRecord } from '@leeway/contract';
import type { PlayerFile } from '@leeway/engine';
import { batch, computed, signal } from '@preact/signals';
import type { Done } from '../parts/Says.tsx';
import { got, newRecord, sent } from '../shell/api.ts';
import { doErrand } from '../shell/errand.ts';
import { tryingWith } from '../shell/trying.ts';
import { OfferedFile } from './files.ts';
import { type Rung, rungsOf } from './rungs.ts';
import { CARRIES, fittingWords, keptWords } from './words.ts';

type Kept<K extends 'profile' | 'session' | 'approach'> = StoredRecord<K>;

/** What the Carries page shows of one player, and what is done on it. */
export class CarriesState {
  readonly owner: string;
  readonly profile = signal<Kept<'profile'> | undefined>(undefined);
  readonly ladder = signal<LadderData | undefined>(undefined);
  /** The player as a Player file, once there are fitted patterns. */
  readonly file = signal<PlayerFile | undefined>(undefined);
  readonly sessions = signal<readonly Kept<'session'>[]>([]);
  readonly approaches = signal<readonly Kept<'approach'>[]>([]);
  readonly offered = signal<readonly OfferedFile[]>([]);
  readonly fault = signal<string | undefined>(undefined);
  private readonly trying = tryingWith(this.fault);
  readonly done = signal<Done | undefined>(undefined);
  readonly fitting = signal<string | undefined>(undefined);
  readonly rungs = computed(() =>
    this.ladder.value === undefined ? [] : rungsOf(this.ladder.value, this.profile.value?.body.clubs),
  );
  /** The club and swing that is looked at: the one chosen, else the one with most balls. */
  readonly chosen = signal<Pick<Rung, 'club' | 'swing'> | undefined>(undefined);
  readonly chosenRung = computed((): Rung | undefined => {
    const [rungs, chosen] = [this.rungs.value, this.chosen.value];
    const found = rungs.find((r) => r.club === chosen?.club && r.swing === chosen.swing);
    return found ?? rungs.toSorted((a, b) => b.balls - a.balls)[0];
  });
  /** Balls that the ladder does not know of yet. */
  readonly stale = computed(() => {
    const { balls = [], fitted } = this.ladder.value ?? {};
    return balls.length + this.approaches.value.length > 0 && fitted?.upToDate !== true;
  });

  constructor(owner: string) {
    this.owner = owner;
  }

  /** The fitted figures of a rung. */
  entryOf({ club, swing }: Rung) {
    return this.ladder.value?.fitted?.ladder?.entries.find((e) => e.club === club && e.swing === swing);
  }

  async load(): Promise<void> {
    await this.trying(async () => {
      const of = <T>(path: string) => got<T>(`/api/players/${this.owner}/${path}`);
      const [profiles, ladder, sessions, approaches] = await Promise.all([
        of<{ records: readonly Kept<'profile'>[] }>('profiles'),
        of<LadderData>('ladder'),
        of<{ records: readonly Kept<'session'>[] }>('sessions'),
        of<{ records: readonly Kept<'approach'>[] }>('approaches'),
      ]);
      const file = ladder.fitted === null ? undefined : await of<PlayerFile>('file');
      batch(() => {
        this.file.value = file;
        this.profile.value = profiles.records.at(-1);
        this.ladder.value = ladder;
        this.approaches.value = approaches.records;
        this.sessions.value = sessions.records.toSorted((a, b) => (a.body.date < b.body.date ? 1 : -1));
      });
    });
  }

  offer(files: readonly File[]): void {
    const offered = files.map((file) => new OfferedFile(this.owner, file));
    this.offered.value = [...this.offered.value, ...offered];
    for (const file of offered) void file.look();
  }

  leave(file: OfferedFile): void {
    this.offered.value = this.offered.value.filter((other) => other !== file);
  }

  async keepFile(file: OfferedFile): Promise<void> {
    if (!(await file.keep())) return;
    const kept = file.preview.value;
    this.leave(file);
    if (kept !== undefined) this.done.value = { words: keptWords(kept) };
    await this.load();
    await this.fit();
  }

  /** Has the patterns fitted, and follows that. */
  async fit(): Promise<void> {
    if (this.ladder.value?.balls.length === 0 && this.approaches.value.length === 0) return;
    await this.trying(async () => {
      this.fitting.value = CARRIES.fitting;
      const standing = await doErrand(this.owner, { task: 'fit' }, (how) => (this.fitting.value = fittingWords(how)));
      if (standing.state === 'failed') this.fault.value = CARRIES.fitFailed;
      await this.load();
    });
    this.fitting.value = undefined;
  }

  /** Keeps the bag with the carries that were typed; undo puts the one before back. */
  async keepClubs(clubs: NonNullable<Profile['clubs']>): Promise<void> {
    const before = this.profile.value;
    if (before === undefined) return;
    await this.putProfile({ ...before.body, clubs });
    const undo = (): void => void this.putProfile(before.body);
    this.done.value = { words: CARRIES.kept, undo: { words: CARRIES.undo, act: undo } };
  }

  private async putProfile(body: Profile): Promise<void> {
    await this.trying(async () => {
      const records = [newRecord(body, this.profile.value?.id)];
      await sent(`/api/players/${this.owner}/profiles`, { records });
      this.done.value = { words: CARRIES.kept };
      await this.load();
      if (this.ladder.value?.fitted !== null) await this.fit();
    });
  }

  /** Keeps an approach; undo takes it back. */
  async keepApproach(body: Approach): Promise<void> {
    await this.trying(async () => {
      const record = newRecord(body);
      await sent(`/api/players/${this.owner}/approaches`, { records: [record] });
      const act = (): void => void this.takeBackApproach(record.id);
      this.done.value = { words: CARRIES.kept, undo: { words: CARRIES.undo, act } };
      await this.load();
    });
  }

  private async takeBackApproach(id: string): Promise<void> {
    await this.trying(async () => {
      await sent(`/api/players/${this.owner}/withdrawals`, { records: [newRecord({}, id)] });
      this.done.value = { words: CARRIES.marks.takenBack };
      await this.load();
    });
  }

  /** Takes a session and all its balls out of what counts. */
  async takeBack(session: StoredRecord<'session'> & { readonly body: Session }): Promise<void> {
    await this.trying(async () => {
      const balls = (this.ladder.value?.balls ?? []).filter((ball) => ball.session === session.id);
      const records = [session.id, ...balls.map(({ id }) => id)].map((id) => newRecord({}, id));
      await sent(`/api/players/${this.owner}/withdrawals`, { records });
      this.done.value = { words: CARRIES.takenBack };
      await this.load();
      await this.fit();
    });
  }
}
