import type { HoleDocument, Shelf, ShelvedGround, ShelvedPlayer, ShotDocument } from '@leeway/contract';
import type { PlanePoint, Units } from '@leeway/engine';
import { batch, computed, effect, signal } from '@preact/signals';
import type { Behind, DrawAsk, HoleAnswer, Picture, PlanDesk, ShotAnswer, SpotAnswer } from '../asks.ts';
import { keepOnGreen } from '../plane/keepOnGreen.ts';
import { FRAME_PX, toPaper } from '../plane/placing.ts';
import { summaryWords } from '../words.ts';
import type { Clock } from './clock.ts';
import { Latest } from './latest.ts';

/** A flag or spot that has lain still this long is answered for in full. */
const SETTLE_MS = 150;
/** A plan that was worked out beforehand is asked for in full this long after its sheet is there. */
const SOLVE_MS = 300;

export type Light = 'paper' | 'sun';
export type Handle = 'flag' | 'spot';

/** What is open: a hole of a ground for a player. */
export interface Open {
  readonly ground: ShelvedGround;
  readonly hole: string;
  readonly player: ShelvedPlayer;
}

/** What the page begins with. */
export interface Start extends Open {
  readonly units: Units;
  readonly light: Light;
  /** Begin with the shot that plays to the flag, for whoever is new here; else with the tee shot. */
  readonly atFlag: boolean;
}

/** How large the sheet is on the page, and whether the page is a phone's. */
export interface Room {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pixelRatio: number;
  readonly phone: boolean;
}

/** A question with the number of the opening it belongs to: answers for a hole that was left are passed over. */
interface Of<Ask> {
  readonly opening: number;
  readonly ask: Ask;
}
type MoveAsk = Parameters<PlanDesk['moveFlag']>[0];

/** What the Plan page shows, as signals; what the user does, as methods. It asks its desk and never works anything out itself. */
export class PlanState {
  readonly shelf: Shelf;
  readonly open;
  readonly units;
  readonly light;
  readonly index = signal(0);
  readonly room = signal<Room | undefined>(undefined);

  /** The plan as last settled; `undefined` while a hole is being opened. */
  readonly hole = signal<HoleAnswer | undefined>(undefined);
  readonly picture = signal<Picture | undefined>(undefined);
  readonly indexPicture = signal<Picture | undefined>(undefined);
  readonly fault = signal<string | undefined>(undefined);
  /** Said aloud once things have settled. */
  readonly said = signal('');
  /** The flag where the finger has it, and where it stood when the hole was opened. */
  readonly flag = signal<PlanePoint | undefined>(undefined);
  readonly startFlag = signal<PlanePoint | undefined>(undefined);
  /** The user's own spot for the shown shot, and what it costs. */
  readonly ownSpot = signal<PlanePoint | undefined>(undefined);
  readonly ownCost = signal<SpotAnswer | undefined>(undefined);
  /** Which of them the next tap on the sheet places. */
  readonly placing = signal<Handle | undefined>(undefined);
  readonly flagWasMoved = signal(false);
  /** The balls behind the shown shot, from when they are asked for. */
  readonly behind = signal<Behind | 'asked' | undefined>(undefined);

  private readonly following = signal<ShotAnswer | undefined>(undefined);
  /** Rises when something on the sheet has changed. */
  private readonly edition = signal(0);

  readonly shot = computed<ShotDocument | undefined>(() => {
    const index = this.index.value;
    const ahead = this.following.value;
    return ahead?.shot === index ? ahead.document : this.hole.value?.plan.shots[index];
  });
  readonly ball = computed<PlanePoint | undefined>(() => this.hole.value?.shots[this.index.value]?.ball);
  readonly spot = computed<PlanePoint | undefined>(() => {
    const index = this.index.value;
    const ahead = this.following.value;
    return ahead?.shot === index ? ahead.spot : this.hole.value?.shots[index]?.spot;
  });
  /** Whose answer is shown. */
  readonly answered = computed(() => {
    if (this.following.value !== undefined) return 'following';
    const hole = this.hole.value;
    return hole === undefined ? undefined : hole.prepared === true ? 'prepared' : 'settled';
  });
  /** Is the flag on the sheet that is shown? */
  readonly flagShown = computed(() => this.isShown(this.flag.value));
  /** The shot that the picture shows. */
  readonly pictured = signal<number | undefined>(undefined);
  readonly drawing = computed(() => this.hole.value !== undefined && this.pictured.value !== this.index.value);
  /** The flag that the shown choice is for. */
  readonly answeredFor = computed(() => this.following.value?.flag ?? this.hole.value?.flag);
  readonly plan = computed<HoleDocument | undefined>(() => this.hole.value?.plan);
  readonly flagMoved = computed(() => {
    const [at, start] = [this.flag.value, this.startFlag.value];
    return at !== undefined && start !== undefined && (at.eastM !== start.eastM || at.northM !== start.northM);
  });

  private readonly desk: PlanDesk;
  private readonly clock: Clock;
  private opening = 0;
  private moveDue = false;
  private callOffSettling: () => void = () => undefined;
  private readonly moves: Latest<Of<MoveAsk>, ShotAnswer | HoleAnswer>;
  private readonly spots: Latest<Of<{ readonly shot: number; readonly spot: PlanePoint }>, SpotAnswer>;
  private readonly draws: Latest<Of<DrawAsk>, Picture>;

  constructor(desk: PlanDesk, shelf: Shelf, clock: Clock, start: Start) {
    this.desk = desk;
    this.shelf = shelf;
    this.clock = clock;
    this.open = signal<Open>({ ground: start.ground, hole: start.hole, player: start.player });
    this.units = signal<Units>(start.units);
    this.light = signal<Light>(start.light);
    const current = <Ask>(question: Of<Ask>): boolean => question.opening === this.opening;
    this.moves = new Latest(
      ({ ask }) => desk.moveFlag(ask),
      (answer, question) => current(question) && this.moved(answer),
      (error, question) => current(question) && this.failedMove(error),
    );
    this.spots = new Latest(
      ({ ask }) => desk.spot(ask),
      (answer, question) => {
        if (current(question) && this.ownSpot.value !== undefined) this.ownCost.value = answer;
      },
      (error, question) => {
        if (!current(question)) return;
        this.fault.value = messageOf(error);
        this.giveUpSpot();
      },
    );
    const drawing = (
      draw: PlanDesk['draw'],
      show: (drawn: Picture, ask: DrawAsk) => void,
    ): Latest<Of<DrawAsk>, Picture> =>
      new Latest(
        ({ ask }) => draw(ask),
        (drawn, question) => {
          if (current(question)) show(drawn, question.ask);
          else drawn.bitmap.close();
        },
        (error, question) => {
          if (current(question)) this.fault.value = messageOf(error);
        },
      );
    this.draws = drawing(
      (ask) => desk.draw(ask),
      (drawn, { shot = 0 }) =>
        batch(() => {
          this.picture.value = drawn;
          this.pictured.value = shot;
          if (this.answered.value === 'prepared') this.later(SOLVE_MS, () => this.askMove('settled'));
        }),
    );
    effect(() => this.draw());
    void this.openHole(undefined, start.atFlag);
  }

  /** Opens another hole, player or ground. */
  turnTo(next: Partial<Open>): void {
    this.open.value = { ...this.open.value, ...next };
    this.index.value = 0;
    void this.openHole();
  }

  setUnits(units: Units): void {
    this.units.value = units;
    void this.openHole(this.flagMoved.value ? this.flag.value : undefined);
  }

  showShot(index: number): void {
    if (index === this.index.value) return;
    batch(() => {
      this.index.value = index;
      this.behind.value = undefined;
      this.giveUpSpot();
    });
  }

  /** Moves the flag, kept on the green; the shown shot follows, and the whole plan when the flag has lain still. */
  flagTo(at: PlanePoint): void {
    const hole = this.hole.value;
    if (hole === undefined) return;
    this.flag.value = keepOnGreen(at, hole.green);
    this.flagWasMoved.value = true;
    this.follow(
      () => this.askMove('following'),
      () => this.askMove('settled'),
    );
  }

  flagToStart(): void {
    if (this.startFlag.value !== undefined) this.flagTo(this.startFlag.value);
  }

  /** The next tap on the sheet places flag or spot. A flag that is not on the shown sheet is gone to first. */
  take(handle: Handle | undefined): void {
    const shots = this.plan.value?.shots ?? [];
    if (handle === 'flag' && !this.flagShown.value) this.showShot(shots.length - 1);
    this.placing.value = handle;
  }

  /** A spot of the user's own; what it costs follows. */
  spotTo(at: PlanePoint): void {
    if (this.hole.value === undefined) return;
    this.ownSpot.value = at;
    this.follow(
      () => this.askSpot(),
      () => this.say(),
    );
  }

  giveUpSpot(): void {
    this.spots.drop();
    this.ownSpot.value = undefined;
    this.ownCost.value = undefined;
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
      this.fault.value = messageOf(error);
    }
  }

  hideBehind(): void {
    this.behind.value = undefined;
  }

  /** Is a place inside the frame of the sheet that is shown? */
  isShown(place: PlanePoint | undefined): boolean {
    const placing = this.picture.value?.placing;
    const room = this.room.value;
    if (place === undefined || placing === undefined || room === undefined) return false;
    const { x, y } = toPaper(placing, place);
    return x > FRAME_PX && y > FRAME_PX && x < room.widthPx - FRAME_PX && y < room.heightPx - FRAME_PX;
  }

  private async openHole(keptFlag?: PlanePoint, atFlag = false): Promise<void> {
    const opening = ++this.opening;
    const same = keptFlag !== undefined;
    this.callOffSettling();
    this.moveDue = false;
    batch(() => {
      this.fault.value = undefined;
      this.placing.value = undefined;
      this.behind.value = undefined;
      this.giveUpSpot();
      if (same) return;
      this.hole.value = undefined;
      this.following.value = undefined;
      this.picture.value = undefined;
      this.pictured.value = undefined;
      this.indexPicture.value = undefined;
    });
    try {
      const answer = await this.desk.open({ ...this.open.value, units: this.units.value });
      if (answer === undefined || opening !== this.opening) return;
      batch(() => {
        this.startFlag.value = answer.flag;
        if (atFlag)
          this.index.value = Math.max(
            0,
            answer.plan.shots.findIndex((shot) => shot.atFlag !== undefined),
          );
        this.settle(answer);
      });
      if (keptFlag !== undefined) this.flagTo(keptFlag);
    } catch (error) {
      if (opening === this.opening) this.fault.value = messageOf(error);
    }
  }

  private settle(answer: HoleAnswer): void {
    this.hole.value = answer;
    this.following.value = undefined;
    this.flag.value = answer.flag;
    this.index.value = Math.min(this.index.value, answer.plan.shots.length - 1);
    this.edition.value++;
  }

  private moved(answer: ShotAnswer | HoleAnswer): void {
    batch(() => {
      this.fault.value = undefined;
      if ('plan' in answer) {
        const ahead = this.moveDue ? this.flag.value : answer.flag;
        this.settle(answer);
        this.flag.value = ahead;
        if (this.flagWasMoved.value) this.say();
      } else {
        this.following.value = answer;
        this.edition.value++;
      }
    });
    if (this.ownSpot.value !== undefined) this.askSpot();
  }

  private failedMove(error: unknown): void {
    batch(() => {
      this.fault.value = messageOf(error);
      this.following.value = undefined;
      this.flag.value = this.hole.value?.flag;
      this.edition.value++;
    });
  }

  /** At most one question a frame, and one more when nothing has moved for a while. */
  private follow(each: () => void, still: () => void): void {
    this.later(SETTLE_MS, () => {
      this.moveDue = false;
      still();
    });
    if (this.moveDue) return;
    this.moveDue = true;
    this.clock.frame(() => {
      if (!this.moveDue) return;
      this.moveDue = false;
      each();
    });
  }

  /** Does something unless something else is put off meanwhile. */
  private later(ms: number, then: () => void): void {
    this.callOffSettling();
    this.callOffSettling = this.clock.after(ms, then);
  }

  private askMove(grade: MoveAsk['grade']): void {
    const flag = this.flag.value;
    if (flag === undefined) return;
    this.moves.put({ opening: this.opening, ask: { flag, shot: this.index.value, grade } });
  }

  private askSpot(): void {
    const spot = this.ownSpot.value;
    if (spot !== undefined) this.spots.put({ opening: this.opening, ask: { shot: this.index.value, spot } });
  }

  private say(): void {
    const shot = this.shot.value;
    if (shot !== undefined) this.said.value = summaryWords(shot, this.units.value, this.ownCost.value);
  }

  /** The sheet, anew whenever anything on it has changed. */
  private draw(): void {
    const room = this.room.value;
    const light = this.light.value;
    const shot = this.index.value;
    void this.edition.value;
    if (room === undefined || this.hole.value === undefined) return;
    // a tee shot that does not go for the flag is shown on the whole hole, so that its flag is there to be dragged
    const whole = !room.phone && shot === 0 && this.hole.value.plan.shots[0]?.atFlag === undefined;
    const sheet = whole ? {} : { shot };
    this.draws.put({ opening: this.opening, ask: { ...sheet, ...room, light, units: this.units.peek() } });
  }
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
