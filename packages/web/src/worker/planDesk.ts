import type { Charted } from '@leeway/chart';
import type { SentBall, ShelvedPlayer } from '@leeway/contract';
import type { Answerers, Turn } from '@leeway/desk';
import type { DrawAsk, Picture, PlanDesk } from '../asks.ts';
import { holeAnswer, shotAnswer } from './answers.ts';
import { askSpot } from './askSpot.ts';
import { behind } from './behind.ts';
import type { Fetch } from './fetched.ts';
import { Held } from './held.ts';
import { followFlag, settleFlag } from './moveFlag.ts';

/** What the desk needs of the place it runs in. */
export interface Surroundings {
  readonly fetched: Fetch;
  /** Paints a sheet. */
  readonly draw: (charted: Charted, ask: DrawAsk) => Promise<Picture>;
  readonly drawIndex: (charted: Charted, ask: DrawAsk) => Promise<Picture>;
  /** Does something after some milliseconds; the result calls it off. */
  readonly after: (ms: number, then: () => void) => () => void;
}

/** When nothing has been drawn for so long, a hole that was shown as worked out beforehand is solved. */
const QUIET_MS = 300;

/** Answers the page's questions about the one hole it has open. */
export function planDesk({ fetched, draw, drawIndex, after }: Surroundings): Answerers<PlanDesk> {
  let held: Held | undefined;
  let recorded: { readonly of: ShelvedPlayer; readonly balls: readonly SentBall[] } | undefined;
  let callOff = (): void => undefined;

  const open = (): Held => {
    if (held === undefined) throw new Error('no hole is open');
    return held;
  };
  const ballsOf = async (player: ShelvedPlayer): Promise<readonly SentBall[]> => {
    if (recorded?.of.id === player.id) return recorded.balls;
    const files = (await Promise.all(player.ballUrls.map(fetched))) as readonly (readonly SentBall[])[];
    recorded = { of: player, balls: files.flat() };
    return recorded.balls;
  };
  const drawn = async (paint: Surroundings['draw'], ask: DrawAsk, turn: Turn): Promise<Picture> => {
    callOff();
    const shown = open();
    const picture = await paint(await shown.charted(), ask);
    turn.move(picture.bitmap);
    // whoever asks for it is told what went wrong
    callOff = after(QUIET_MS, () => void shown.solved().catch(() => undefined));
    return picture;
  };
  return {
    open: async (ask, turn) => {
      callOff();
      held = await Held.take(ask, held, fetched, turn);
      return held.answer();
    },
    moveFlag: async (ask, turn) => {
      const solved = await open().solved();
      if (ask.grade === 'following') return shotAnswer(solved, followFlag(solved, ask), ask.shot);
      await settleFlag(solved, ask, turn);
      return holeAnswer(solved);
    },
    spot: async (ask) => askSpot(await open().solved(), ask),
    draw: (ask, turn) => drawn(draw, ask, turn),
    drawIndex: (ask, turn) => drawn(drawIndex, ask, turn),
    behind: async (ask) => {
      const { read } = open();
      return behind(await ballsOf(read.ask.player), read.player, ask);
    },
  };
}
