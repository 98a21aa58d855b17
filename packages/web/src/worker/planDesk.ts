import type { SentBall, ShelvedPlayer } from '@leeway/contract';
import type { Answerers } from '@leeway/desk';
import type { DrawAsk, PlanDesk, Picture } from '../asks.ts';
import { holeAnswer, shotAnswer } from './answers.ts';
import { askSpot } from './askSpot.ts';
import { behind } from './behind.ts';
import type { Fetch } from './fetched.ts';
import { followFlag, settleFlag } from './moveFlag.ts';
import { type OpenHole, openHole } from './openHole.ts';

/** What the desk needs of the place it runs in. */
export interface Surroundings {
  readonly fetched: Fetch;
  /** Paints a sheet of the open hole. */
  readonly draw: (open: OpenHole, ask: DrawAsk) => Promise<Picture>;
  readonly drawIndex: (open: OpenHole, ask: DrawAsk) => Promise<Picture>;
}

/** Answers the page's questions about the one hole it has open. */
export function planDesk({ fetched, draw, drawIndex }: Surroundings): Answerers<PlanDesk> {
  let held: OpenHole | undefined;
  let recorded: { readonly of: ShelvedPlayer; readonly balls: readonly SentBall[] } | undefined;
  const open = (): OpenHole => {
    if (held === undefined) throw new Error('no hole is open');
    return held;
  };
  const ballsOf = async (player: ShelvedPlayer): Promise<readonly SentBall[]> => {
    if (recorded?.of.id === player.id) return recorded.balls;
    const files = (await Promise.all(player.ballUrls.map(fetched))) as readonly (readonly SentBall[])[];
    recorded = { of: player, balls: files.flat() };
    return recorded.balls;
  };
  return {
    open: async (ask, turn) => {
      held = await openHole(ask, fetched, turn);
      return holeAnswer(held);
    },
    moveFlag: async (ask, turn) => {
      if (ask.grade === 'following') return shotAnswer(open(), followFlag(open(), ask), ask.shot);
      await settleFlag(open(), ask, turn);
      return holeAnswer(open());
    },
    spot: (ask) => askSpot(open(), ask),
    draw: async (ask, turn) => {
      const picture = await draw(open(), ask);
      turn.move(picture.bitmap);
      return picture;
    },
    drawIndex: async (ask, turn) => {
      const picture = await drawIndex(open(), ask);
      turn.move(picture.bitmap);
      return picture;
    },
    behind: async (ask) => {
      const { player } = open().ask;
      return behind(await ballsOf(player), open().player, ask);
    },
  };
}
