import type { Charted } from '@leeway/chart';
import type { Turn } from '@leeway/desk';
import type { HoleAnswer, OpenAsk } from '../asks.ts';
import { chartedBefore, chartedOf } from './charted.ts';
import type { Fetch } from './fetched.ts';
import type { OpenHole } from './openHole.ts';
import { type Prepared, readPrepared } from './prepared.ts';
import { readHole, type ReadHole } from './readHole.ts';

const solver = () => import('./solving.ts');

/**
 * The hole that the page has open. One that was worked out beforehand is answered for at once, and solved when something is asked that needs it.
 */
export class Held {
  readonly read: ReadHole;
  private readonly prepared: Prepared | undefined;
  private open: OpenHole | undefined;
  private opening: Promise<OpenHole> | undefined;

  private constructor(read: ReadHole, prepared: Prepared | undefined, open?: OpenHole) {
    this.read = read;
    this.prepared = prepared;
    this.open = open;
  }

  /** Opens a hole: at once when it is the one that is held, or was worked out beforehand. */
  static async take(ask: OpenAsk, held: Held | undefined, fetched: Fetch, turn: Pick<Turn, 'pause'>): Promise<Held> {
    const known = held?.holds(ask) === true ? held.open : undefined;
    if (known !== undefined) {
      const { reopen } = await solver();
      const open = await reopen(known, ask, turn);
      return new Held(open, undefined, open);
    }
    // what was worked out beforehand is for calm air
    const calm = (ask.wind?.speedMps ?? 0) === 0;
    const beforehand = ask.ground.prepared.find(
      ({ hole, player }) => calm && hole === ask.hole && player === ask.player.id,
    );
    const [read, sent] = await Promise.all([
      readHole(ask, fetched),
      beforehand === undefined ? undefined : fetched(beforehand.url),
    ]);
    await turn.pause();
    if (sent !== undefined) return new Held(read, readPrepared(sent));
    const { solveRead } = await solver();
    return new Held(read, undefined, await solveRead(read, turn));
  }

  /** The answer to its opening. */
  async answer(): Promise<HoleAnswer> {
    const { open, prepared } = this;
    if (open === undefined && prepared !== undefined) return prepared.answers[this.read.ask.units];
    const { holeAnswer } = await solver();
    return holeAnswer(open ?? (await this.solved()));
  }

  /** The hole solved. */
  solved(): Promise<OpenHole> {
    if (this.open !== undefined) return Promise.resolve(this.open);
    this.opening ??= solver()
      .then(({ solveRead }) => solveRead(this.read, { pause: () => Promise.resolve() }))
      .then((open) => (this.open = open));
    return this.opening;
  }

  /** What its charts are drawn from. */
  async charted(): Promise<Charted> {
    const { open, prepared, read } = this;
    if (open === undefined && prepared !== undefined) return chartedBefore(read, prepared);
    return chartedOf(open ?? (await this.solved()));
  }

  private holds({ ground, hole, player }: OpenAsk): boolean {
    const { ask } = this.read;
    return ask.ground.id === ground.id && ask.hole === hole && ask.player.id === player.id;
  }
}
