import type { Charted } from '@leeway/chart';
import type { SentBall, ShelvedPlayer } from '@leeway/contract';
import type { Answerers, Turn } from '@leeway/desk';
import type { DrawAsk, Picture, PlanDesk } from '../asks.ts';
import { behind } from '../behind.ts';
import { unchosen } from './charted.ts';
import { openingShot, sheetOf } from '../opening.ts';
import type { Fetch } from './fetched.ts';
import { Held } from './held.ts';

/** What the desk needs of the place it runs in. */
export interface Surroundings {
  readonly fetched: Fetch;
  /** Paints a sheet. */
  readonly draw: (charted: Charted, ask: DrawAsk) => Promise<Picture>;
  readonly drawIndex: (charted: Charted, ask: DrawAsk) => Promise<Picture>;
}

/** Answers the page's questions about the one hole it has open. */
export function planDesk({ fetched, draw, drawIndex }: Surroundings): Answerers<PlanDesk> {
  let held: Held | undefined;
  let recorded: { readonly of: ShelvedPlayer; readonly balls: readonly SentBall[] } | undefined;

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
  let foreseen: { readonly of: Held; readonly key: string; readonly picture: Picture } | undefined;
  /** The picture that was drawn beforehand, if it is the one; it is given once. */
  const beforehand = (ask: DrawAsk): Picture | undefined => {
    const { of, key, picture } = foreseen ?? {};
    foreseen = undefined;
    if (picture === undefined) return undefined;
    if (of === held && key === JSON.stringify(ask)) return picture;
    picture.bitmap.close();
    return undefined;
  };
  const drawn = async (paint: Surroundings['draw'], ask: DrawAsk, turn: Turn): Promise<Picture> => {
    const charted = await open().charted();
    const picture = await paint(ask.unchosen === undefined ? charted : unchosen(charted, ask.unchosen), ask);
    turn.move(picture.bitmap);
    return picture;
  };
  return {
    open: async (ask, turn) => {
      held = await Held.take(ask, held, fetched, turn);
      return held.answer();
    },
    moveFlag: async (ask, turn) => {
      foreseen?.picture.bitmap.close();
      foreseen = undefined;
      const solved = await open().solved();
      const { followFlag, holeAnswer, settleFlag, shotAnswer } = await import('./solving.ts');
      if (ask.grade === 'following') return shotAnswer(solved, followFlag(solved, ask), ask.shot);
      await settleFlag(solved, ask, turn);
      return holeAnswer(solved);
    },
    spot: async (ask) => {
      const solved = await open().solved();
      const { askSpot } = await import('./solving.ts');
      return askSpot(solved, ask);
    },
    options: async ({ shot }) => {
      const solved = await open().solved();
      const { askOptions } = await import('./solving.ts');
      return askOptions(solved, shot);
    },
    scores: async ({ shot }) => {
      const solved = await open().solved();
      const { askScores } = await import('./solving.ts');
      return askScores(solved, shot);
    },
    keep: async (ask) => {
      const solved = await open().solved();
      const { keepAnswer } = await import('./solving.ts');
      return keepAnswer(solved, ask);
    },
    draw: (ask, turn) => drawn(async (charted) => beforehand(ask) ?? draw(charted, ask), ask, turn),
    foresee: async ({ atFlag, ...format }) => {
      const of = open();
      const { plan } = await of.answer();
      const ask = sheetOf(plan, openingShot(plan, atFlag), format);
      foreseen = { of, key: JSON.stringify(ask), picture: await draw(await of.charted(), ask) };
      return true as const;
    },
    drawIndex: (ask, turn) => drawn(drawIndex, ask, turn),
    behind: async (ask) => {
      const { read } = open();
      return behind(await ballsOf(read.ask.player), read.player, ask);
    },
  };
}
