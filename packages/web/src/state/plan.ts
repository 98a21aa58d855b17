import type { HoleDocument, Shelf, ShotDocument } from '@leeway/contract';
import type { ShownWind } from '@leeway/chart';
import { CALM, FORECAST_HEIGHT_M, type PlanePoint, type Units, type Wind } from '@leeway/engine';
import { batch, computed, effect, signal } from '@preact/signals';
import type { Behind, FlagAsk, HoleAnswer, KeepAnswer, Option, PlanDesk, ScoresAnswer, ShotAnswer } from '../asks.ts';
import { keepOnGreen } from '../plane/keepOnGreen.ts';
import { plainSpot } from '../plane/plainSpot.ts';
import { openingShot, type SheetFormat, sheetOf } from '../opening.ts';
import { summaryWords } from '../words.ts';
import type { Clock } from './clock.ts';
import { Moves } from './moves.ts';
import type { Light, Open, Start } from './open.ts';
import { OwnSpot } from './ownSpot.ts';
import { Pace } from './pace.ts';
import { YouFirst } from './youFirst.ts';
import { type Room, Sheets } from './sheets.ts';

/** A plan that was worked out beforehand is asked for in full this long after its sheet is there. */
const SOLVE_MS = 300;

export type Handle = 'flag' | 'spot';

/** What the Plan page shows, as signals; what the user does, as methods. It asks its desk and never works anything out itself. */
export class PlanState {
  readonly shelf: Shelf;
  readonly open;
  readonly units;
  readonly light;
  /** The shown shot. */
  readonly index = signal(0);
  /** The plan as last settled; `undefined` while a hole is being opened. */
  readonly hole = signal<HoleAnswer | undefined>(undefined);
  readonly fault = signal<string | undefined>(undefined);
  /** Said aloud once things have settled. */
  readonly said = signal('');
  /** The flag where the finger has it, and where it stood when the hole was opened. */
  readonly flag = signal<PlanePoint | undefined>(undefined);
  readonly startFlag = signal<PlanePoint | undefined>(undefined);
  readonly flagWasMoved = signal(false);
  /** Which of them the next tap on the sheet places. */
  readonly placing = signal<Handle | undefined>(undefined);
  /** The balls behind the shown shot, from when they are asked for. */
  readonly behind = signal<Behind | 'asked' | undefined>(undefined);
  /** Chances of the score with the shown shot's choices, from when they are asked for. */
  readonly scores = signal<ScoresAnswer | 'unknown' | 'asked' | undefined>(undefined);
  /** What is kept is shown, and can be added to. */
  readonly keeping = signal(false);
  readonly own: OwnSpot;
  readonly first = new YouFirst();
  readonly sheets: Sheets;

  /** The shown shot for where the flag has been followed to, ahead of the plan. */
  private readonly following = signal<ShotAnswer | undefined>(undefined);
  /** Rises when something on the sheet has changed. */
  private readonly edition = signal(0);
  private readonly ahead = computed(() =>
    this.following.value?.shot === this.index.value ? this.following.value : undefined,
  );

  readonly plan = computed<HoleDocument | undefined>(() => this.hole.value?.plan);
  readonly shot = computed<ShotDocument | undefined>(
    () => this.ahead.value?.document ?? this.plan.value?.shots[this.index.value],
  );
  readonly ball = computed(() => this.hole.value?.shots[this.index.value]?.ball);
  readonly spot = computed(() => this.ahead.value?.spot ?? this.hole.value?.shots[this.index.value]?.spot);
  /** Where a spot of the user's own is taken from: the choice's, or with the answer hidden a place that tells nothing of it. */
  readonly spotFrom = computed(() => {
    if (!this.first.hidden.value) return this.spot.value;
    const [ball, flag] = [this.ball.value, this.flag.value];
    return ball && flag && plainSpot(ball, flag);
  });
  /** Whose answer is shown, and the flag that it is for. */
  readonly answered = computed(() => {
    if (this.following.value !== undefined) return 'following';
    const hole = this.hole.value;
    return hole === undefined ? undefined : hole.prepared === true ? 'prepared' : 'settled';
  });
  readonly answeredFor = computed(() => this.following.value?.flag ?? this.hole.value?.flag);
  /** The flag has gone on from where the shown choice has it. */
  readonly lags = computed(() => {
    const [at, answered] = [this.flag.value, this.answeredFor.value];
    const turned = this.wind.value !== this.answeredWind.value;
    return at !== undefined && answered !== undefined && (turned || !samePlace(at, answered));
  });
  readonly flagMoved = computed(() => {
    const [at, start] = [this.flag.value, this.startFlag.value];
    return at !== undefined && start !== undefined && !samePlace(at, start);
  });
  /** The sheet of another shot is still there. */
  readonly drawing = computed(() => this.hole.value !== undefined && this.sheets.shot.value !== this.index.value);

  /** The wind, and the one that the shown choice is for. */
  readonly wind = signal<Wind>(CALM);
  private readonly answeredWind = signal<Wind>(CALM);

  private readonly desk: PlanDesk;
  private readonly pace: Pace;
  private readonly moves: Moves<FlagAsk, ShotAnswer | HoleAnswer>;
  private opening = 0;

  constructor(desk: PlanDesk, shelf: Shelf, clock: Clock, start: Start) {
    this.desk = desk;
    this.shelf = shelf;
    this.pace = new Pace(clock);
    this.open = signal<Open>({ ground: start.ground, hole: start.hole, player: start.player });
    this.units = signal<Units>(start.units);
    this.light = signal<Light>(start.light);
    const failed = (error: unknown): void => this.fail(error);
    this.moves = new Moves((ask) => desk.moveFlag(ask), {
      got: (answer, ask) => this.moved(answer, ask),
      failed: (error) => {
        this.flag.value = this.hole.value?.flag;
        this.fail(error);
      },
    });
    this.own = new OwnSpot(desk, () => this.say(), failed);
    this.sheets = new Sheets(desk, () => this.solvePrepared(), failed);
    effect(() => this.draw());
    effect(() => this.drawIndex());
    const opened = this.openHole({ atFlag: start.atFlag, asked: start.answer });
    const foreseen = this.foresee(start.atFlag);
    void opened.then(foreseen);
  }

  /** Opens another hole, player or ground. */
  turnTo(next: Partial<Open>): void {
    this.open.value = { ...this.open.value, ...next };
    this.index.value = 0;
    this.hole.value = undefined;
    void this.openHole();
  }

  /** Tells the same hole in other units; a moved flag stays where it is. */
  setUnits(units: Units): void {
    this.units.value = units;
    const keptFlag = this.flagMoved.value ? this.flag.value : undefined;
    void this.openHole(keptFlag === undefined ? {} : { keptFlag });
  }

  showShot(index: number): void {
    if (index === this.index.value) return;
    batch(() => {
      this.index.value = index;
      this.scores.value = undefined;
      this.behind.value = undefined;
      this.own.giveUp();
      this.first.again();
    });
  }

  /** Hides every answer until it was chosen first, or shows them as they come. */
  hideAnswers(on: boolean): void {
    batch(() => {
      // nothing of the answer stays while its sheet is drawn without it
      this.sheets.clear();
      this.first.on.value = on;
      this.first.again();
      this.behind.value = undefined;
      this.own.giveUp();
    });
  }

  /** Shows the answer beside what was chosen. */
  showAnswer(): void {
    this.first.show();
    this.own.ask(this.index.value, true);
  }

  /** What can be played from where the shown shot's ball lies. */
  options(): Promise<readonly Option[] | undefined> {
    return this.desk.options({ shot: this.index.peek() });
  }

  /** The plan as it stands, to be kept, and the own spot's place on the Earth. */
  keep(): Promise<KeepAnswer | undefined> {
    const place = this.own.cost.peek()?.spot;
    return this.desk.keep(place === undefined ? {} : { place });
  }

  /** Moves the flag, kept on the green; the shown shot follows, and the whole plan when the flag has lain still. */
  flagTo(at: PlanePoint): void {
    const hole = this.hole.value;
    if (hole === undefined) return;
    this.flag.value = keepOnGreen(at, hole.green);
    this.flagWasMoved.value = true;
    this.follow();
  }

  /** Turns the wind, makes it stronger or weaker, or says whence it is known; all figures follow. */
  windTo(to: Partial<Wind>): void {
    if (this.hole.value === undefined) return;
    this.wind.value = { ...this.wind.value, ...to };
    this.windWasTurned = true;
    this.follow();
  }

  private windWasTurned = false;

  private follow(): void {
    this.pace.follow(
      () => this.askMove('following'),
      () => this.askMove('settled'),
    );
  }

  flagToStart(): void {
    if (this.startFlag.value !== undefined) this.flagTo(this.startFlag.value);
  }

  /** A spot of the user's own; what it costs follows. */
  spotTo(at: PlanePoint): void {
    if (this.hole.value === undefined) return;
    this.own.at.value = at;
    if (this.first.hidden.value) return;
    this.pace.follow(
      () => this.own.ask(this.index.value, false),
      () => this.own.ask(this.index.value, true),
    );
  }

  /** The next tap on the sheet places flag or spot. A flag that is not on the shown sheet is gone to first. */
  take(handle: Handle | undefined): void {
    const shots = this.plan.value?.shots ?? [];
    if (handle === 'flag' && !this.sheets.shows(this.flag.value)) this.showShot(shots.length - 1);
    this.placing.value = handle;
  }

  async showBehind(): Promise<void> {
    const shot = this.shot.value;
    if (shot === undefined) return;
    this.behind.value = 'asked';
    try {
      const behind = await this.desk.behind(shot.option);
      if (this.behind.value === 'asked') this.behind.value = behind;
    } catch (error) {
      this.behind.value = undefined;
      this.fail(error);
    }
  }

  /** Asks for the chances of the score; what has changed meanwhile is not told of. */
  async showScores(): Promise<void> {
    this.scores.value = 'asked';
    try {
      const scores = await this.desk.scores({ shot: this.index.value });
      if (this.scores.value === 'asked') this.scores.value = scores;
    } catch (error) {
      this.scores.value = undefined;
      this.fail(error);
    }
  }

  hideBehind(): void {
    this.behind.value = undefined;
  }

  private async openHole({
    keptFlag,
    atFlag = false,
    asked,
  }: {
    keptFlag?: PlanePoint;
    atFlag?: boolean;
    asked?: Promise<HoleAnswer | undefined> | undefined;
  } = {}): Promise<void> {
    const opening = ++this.opening;
    this.pace.stop();
    this.moves.drop();
    batch(() => {
      this.following.value = undefined;
      this.scores.value = undefined;
      this.fault.value = undefined;
      this.placing.value = undefined;
      this.behind.value = undefined;
      this.own.giveUp();
      this.first.again();
      if (this.hole.value === undefined) this.sheets.clear();
    });
    try {
      const wind = this.wind.value;
      const answer = await (asked ?? this.desk.open({ ...this.open.value, units: this.units.value, wind }));
      if (answer === undefined || opening !== this.opening) return;
      batch(() => {
        if (atFlag) this.index.value = openingShot(answer.plan, atFlag);
        this.startFlag.value = answer.flag;
        this.flag.value = answer.flag;
        this.answeredWind.value = wind;
        this.settle(answer);
      });
      if (keptFlag !== undefined) this.flagTo(keptFlag);
    } catch (error) {
      if (opening === this.opening) this.fail(error);
    }
  }

  private settle(answer: HoleAnswer): void {
    this.scores.value = undefined;
    this.hole.value = answer;
    this.following.value = undefined;
    this.index.value = Math.min(this.index.value, answer.plan.shots.length - 1);
    this.edition.value++;
  }

  private moved(answer: ShotAnswer | HoleAnswer, { flag, wind }: FlagAsk): void {
    batch(() => {
      this.fault.value = undefined;
      if (wind !== undefined) this.answeredWind.value = wind;
      if ('plan' in answer) {
        // the finger may have gone on meanwhile
        if (this.flag.value !== undefined && samePlace(this.flag.value, flag)) this.flag.value = answer.flag;
        this.settle(answer);
        if (this.flagWasMoved.value || this.windWasTurned) this.say();
      } else {
        this.following.value = answer;
        this.scores.value = undefined;
        this.edition.value++;
      }
    });
    if (!this.first.hidden.value) this.own.ask(this.index.value, false);
  }

  private solvePrepared(): void {
    if (this.answered.value === 'prepared') this.pace.later(SOLVE_MS, () => this.askMove('settled'));
  }

  private askMove(grade: FlagAsk['grade']): void {
    const flag = this.flag.value;
    if (flag !== undefined) this.moves.put({ flag, wind: this.wind.value, shot: this.index.value, grade });
  }

  private shownWind(): ShownWind {
    const { speedMps, fromDeg, heightM } = this.wind.peek();
    return { speedMps, fromDeg, known: heightM === FORECAST_HEIGHT_M ? 'forecast' : 'felt' };
  }

  private fail(error: unknown): void {
    batch(() => {
      this.following.value = undefined;
      this.fault.value = error instanceof Error ? error.message : String(error);
    });
  }

  private say(): void {
    const shot = this.shot.value;
    if (shot !== undefined && !this.first.hidden.value)
      this.said.value = summaryWords(shot, this.units.value, this.own.cost.value);
  }

  /** The sheet, anew whenever anything on it has changed. */
  private draw(): void {
    const room = this.sheets.room.value;
    const light = this.light.value;
    const shot = this.index.value;
    void this.edition.value;
    const hole = this.hole.value;
    if (room === undefined || hole === undefined) return;
    const format = this.format(room, light);
    this.sheets.draw(this.first.hidden.value ? { unchosen: shot, ...format } : sheetOf(hole.plan, shot, format), shot);
  }

  private format(room: Room, light: Light): SheetFormat {
    return { ...room, light, units: this.units.peek(), wind: this.shownWind() };
  }

  /** While the first answer is on its way, its sheet is begun. */
  private foresee(atFlag: boolean): () => void {
    return effect(() => {
      const room = this.sheets.room.value;
      if (this.hole.value !== undefined || room === undefined) return;
      this.desk.foresee({ ...this.format(room, this.light.peek()), atFlag }).catch(() => undefined);
    });
  }

  /** The small chart of the hole; it waits for the sheet, and its shots move only once they have settled. */
  private drawIndex(): void {
    const light = this.light.value;
    const shot = this.index.value;
    const room = this.sheets.room.value;
    if (room === undefined || room.phone || this.hole.value === undefined || this.sheets.shot.value === undefined)
      return;
    this.sheets.drawIndex({
      shot,
      light,
      units: this.units.peek(),
      wind: this.shownWind(),
      pixelRatio: room.pixelRatio,
    });
  }
}

const samePlace = (a: PlanePoint, b: PlanePoint): boolean => a.eastM === b.eastM && a.northM === b.northM;
