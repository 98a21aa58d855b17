import { type LadderData, MISHIT, type StoredRecord } from '@leeway/contract';
import {
  type CarryKnown,
  carryEntry,
  claimedOf,
  enough,
  fitSession,
  type Hitter,
  isFullSwing,
  isTiring,
  type KnownSoFar,
  onCoursePrior,
  type PlayerFile,
  randomFrom,
  readClub,
  SESSION_CAP,
  sessionOrder,
} from '@leeway/engine';
import { batch, computed, signal } from '@preact/signals';
import { rungsOf } from '../carries/rungs.ts';
import { got, newRecord, today } from '../shell/api.ts';
import { doErrand } from '../shell/errand.ts';
import { go, hrefOf } from '../shell/place.ts';
import { units } from '../shell/remembered.ts';
import { tryingWith } from '../shell/trying.ts';
import { type Called, nextCall, type Option, sameOption, seedOf } from './calls.ts';
import { ballKeyed, type Keyed, NOTHING_KEYED } from './keyed.ts';
import { type HitBall, readLog, type SessionLog, sessionOf, type SetUp, writeLog } from './log.ts';
import { unsent } from './unsent.ts';
import { SESSION } from './words.ts';

/** Patterns are fitted anew after so many balls of a session, and then after every ten. */
const FIRST_FIT = 5;
const FIT_EACH = 10;
/** A club and swing that can be hit, with what is known of its carry. */
export interface Hittable extends Option {
  readonly carryM?: number;
}

/** A session of balls with known clubs: what is hit next, what was hit, and how much more there is to learn. */
export class SessionState {
  readonly owner: string;
  readonly profile = signal<StoredRecord<'profile'> | undefined>(undefined);
  readonly ladder = signal<LadderData | undefined>(undefined);
  readonly log = signal<SessionLog | undefined>(undefined);
  /** The form is shown: before the first ball, and when the coach corrects it. */
  readonly settingUp = signal(false);
  readonly keyed = signal<Keyed>(NOTHING_KEYED);
  readonly active = signal<'carry' | 'side'>('carry');
  /** Another club than the one that is called. */
  readonly own = signal<Option | undefined>(undefined);
  readonly wrong = signal<string | undefined>(undefined);
  readonly fault = signal<string | undefined>(undefined);
  private readonly trying = tryingWith(this.fault);
  /** What was just done, for those who hear the page. */
  readonly said = signal('');
  readonly fitting = signal(false);
  readonly ending = signal(false);

  readonly balls = computed(() => this.log.value?.balls ?? []);

  /** Every club and swing of the bag and the ladder, the shortest first; a sore player's full swings are left out. */
  readonly hittable = computed((): readonly Hittable[] => {
    const { clubs = [], sparedSince } = this.profile.value?.body ?? {};
    const ladder = this.ladder.value;
    const rungs: Hittable[] = ladder === undefined ? [] : rungsOf(ladder, clubs).toReversed();
    const bag = clubs.map(({ name: club }): Hittable => ({ club, swing: 'full' }));
    const unknown = bag.filter((o) => !rungs.some((rung) => sameOption(rung, o))).toReversed();
    return [...unknown, ...rungs].filter(
      ({ club, swing }) => readClub(club)?.family !== 'putter' && (sparedSince === undefined || !isFullSwing(swing)),
    );
  });

  /** The player's level and claims, as a fit takes them. */
  private readonly file = computed((): PlayerFile | undefined => {
    const body = this.profile.value?.body;
    if (body === undefined) return undefined;
    const { minor: _minor, paceM: _pace, archived: _archived, sparedSince: _spared, ...known } = body;
    return { version: 1, ...known };
  });

  /** What is known of each carry: as it was fitted, else as it is believed of such a player. */
  private readonly known = computed((): readonly (KnownSoFar & Option)[] => {
    const file = this.file.value;
    const fitted = this.ladder.value?.fitted?.ladder?.entries ?? [];
    if (file === undefined) return [];
    const clubs = this.hittable.value.map(({ club: name }) => ({ name }));
    const believed = fitSession({ ...file, clubs: file.clubs ?? clubs }, []).map((s) =>
      carryEntry(s, claimedOf(file, s.club, s.swing)),
    );
    return [...fitted, ...believed.filter((e) => !fitted.some((f) => sameOption(f, e)))];
  });

  readonly who = computed((): Hitter => (this.profile.value?.body.minor === true ? 'junior' : 'adult'));

  readonly called = computed((): Called | undefined => {
    const log = this.log.value;
    return log === undefined ? undefined : nextCall(log.order, log.balls, (o) => this.toGo(o)?.more === 0);
  });

  /** The club in the player's hand. */
  readonly present = computed(
    (): Option | undefined =>
      this.own.value ?? this.called.value ?? this.balls.value.at(-1) ?? this.log.value?.setUp.options[0],
  );

  /** Whether carries fall off from the first ball to the last by more than chance. */
  readonly tiring = computed((): boolean =>
    isTiring(
      this.balls.value.flatMap((ball) => {
        const goodCarryM = this.carryOf(ball);
        return goodCarryM === undefined ? [] : [{ carryM: ball.carryM, goodCarryM }];
      }),
    ),
  );

  constructor(owner: string) {
    this.owner = owner;
    this.log.value = readLog(owner);
    this.settingUp.value = this.log.value === undefined;
  }

  private at = (path: string): string => `/api/players/${this.owner}/${path}`;

  async load(): Promise<void> {
    await unsent.flush();
    await this.trying(async () => {
      const [profiles, ladder] = await Promise.all([
        got<{ records: readonly StoredRecord<'profile'>[] }>(this.at('profiles')),
        got<LadderData>(this.at('ladder')),
      ]);
      batch(() => {
        this.profile.value = profiles.records.at(-1);
        this.ladder.value = ladder;
      });
    });
  }

  /** What a club is known or claimed to carry. */
  carryOf(o: Option): number | undefined {
    return this.hittable.value.find((h) => sameOption(h, o))?.carryM;
  }

  ballsOf(o: Option): readonly HitBall[] {
    return this.balls.value.filter((ball) => sameOption(ball, o));
  }

  /** How well a club is to be known and how many more balls that takes: by the last fit, less those that were hit since. */
  toGo(o: Option): Pick<CarryKnown, 'more' | 'neededM'> | undefined {
    const entry = this.known.value.find((e) => sameOption(e, o));
    if (entry === undefined) return undefined;
    const [carry] = this.needs([entry], this.log.value?.setUp.withinM).carries;
    if (carry === undefined) return undefined;
    const { balls = [], fitted } = this.ladder.value ?? {};
    const stored = balls.filter((ball) => sameOption(ball, o));
    const mine = this.ballsOf(o);
    const has = (list: readonly { readonly id: string }[], id: string): boolean => list.some((ball) => ball.id === id);
    const unfitted = fitted?.upToDate === true ? 0 : Math.max(0, stored.length - entry.n);
    const fresh = mine.filter(({ id }) => !has(stored, id)).length;
    const undone = stored.filter(({ id, session }) => session === this.log.value?.session && !has(mine, id)).length;
    const since = unfitted + fresh - undone;
    return { neededM: carry.neededM, more: Math.max(0, carry.more - since) };
  }

  private needs(entries: readonly KnownSoFar[], withinM: number | undefined, most = SESSION_CAP[this.who.value]) {
    const onCourse = this.file.value?.onCourse ?? onCoursePrior(this.file.value ?? {});
    const hit = SESSION_CAP[this.who.value] - most;
    const asked = { onCourse, who: this.who.value, hit, ...(withinM === undefined ? {} : { withinM }) };
    return { ...enough(entries, asked), order: (seed: number) => sessionOrder(entries, asked, randomFrom(seed)) };
  }

  /** Begins, or corrects how it was set up. */
  begin(setUp: SetUp): void {
    const before = this.log.value;
    const record = newRecord(sessionOf(setUp, today(), units.value), before?.stands);
    unsent.add(this.at('sessions'), record);
    const session = before?.session ?? record.id;
    const chosen = this.known.value.filter((e) => setUp.options.some((o) => sameOption(o, e)));
    const order = this.needs(chosen, setUp.withinM, setUp.most).order(seedOf(session));
    this.keepLog({ session, stands: record.id, setUp, order, balls: before?.balls ?? [] });
    this.settingUp.value = false;
    void unsent.flush();
  }

  /** Keeps the ball that is keyed. */
  keep(mishit: boolean): void {
    const [log, option] = [this.log.value, this.present.value];
    if (log === undefined || option === undefined) return;
    const read = ballKeyed(this.keyed.value, units.value);
    if (typeof read === 'string') {
      this.wrong.value = read === 'no carry' ? SESSION.noCarry : SESSION.noSide;
      this.active.value = read === 'no carry' ? 'carry' : 'side';
      return;
    }
    const { club, swing } = option;
    const record = newRecord({
      session: log.session,
      club,
      swing,
      ...read,
      ...(mishit ? { readings: { strike: MISHIT } } : {}),
    });
    unsent.add(this.at('shots'), record);
    const ball: HitBall = { id: record.id, club, swing, ...read, ...(mishit ? { mishit: true as const } : {}) };
    this.keepLog({ ...log, balls: [...log.balls, ball] });
    this.said.value = SESSION.keptBall(log.balls.length + 1);
    this.clear();
    void this.bring(log.balls.length + 1);
  }

  /** Takes the last ball back, and the one before it when asked again. */
  undo(): void {
    const log = this.log.value;
    const last = log?.balls.at(-1);
    if (log === undefined || last === undefined) return;
    unsent.add(this.at('withdrawals'), newRecord({ why: 'undone' }, last.id));
    this.keepLog({ ...log, balls: log.balls.slice(0, -1) });
    this.said.value = SESSION.undone(log.balls.length);
    void unsent.flush();
  }

  clear(): void {
    batch(() => {
      this.keyed.value = { ...NOTHING_KEYED, hand: this.keyed.value.hand };
      this.active.value = 'carry';
      this.wrong.value = undefined;
    });
  }

  /** Ends the session: everything is brought to the server, fitted, and shown on the ladder. */
  async end(): Promise<void> {
    this.ending.value = true;
    if (!(await unsent.flush())) this.fault.value = SESSION.notEnded;
    else
      await this.trying(async () => {
        if (this.balls.value.length > 0) await doErrand(this.owner, { task: 'fit' }, () => undefined);
        writeLog(this.owner, undefined);
        this.log.value = undefined;
        go(hrefOf('carries', this.owner));
      });
    this.ending.value = false;
  }

  private keepLog(log: SessionLog): void {
    writeLog(this.owner, log);
    this.log.value = log;
  }

  /** Sends what waits; from time to time has the patterns fitted with it. */
  private async bring(balls: number): Promise<void> {
    const there = await unsent.flush();
    if (!there || this.fitting.value || (balls !== FIRST_FIT && balls % FIT_EACH !== 0)) return;
    this.fitting.value = true;
    await this.trying(async () => {
      await doErrand(this.owner, { task: 'fit' }, () => undefined);
      this.ladder.value = await got<LadderData>(this.at('ladder'));
    });
    this.fitting.value = false;
  }
}

/** Clubs that a session starts with: all full swings, or every swing when there are none. */
export function usualOptions(hittable: readonly Hittable[]): readonly Option[] {
  const full = hittable.filter(({ swing }) => isFullSwing(swing));
  return (full.length > 0 ? full : hittable).map(({ club, swing }) => ({ club, swing }));
}
