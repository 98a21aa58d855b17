import { receivedHole, type SentHole } from '@leeway/contract';
import type { Turn } from '@leeway/desk';
import { type HolePlan, type PlayerFile, playerModel, type PlayerModel, Study } from '@leeway/engine';
import type { OpenAsk } from '../asks.ts';
import type { Fetch } from './fetched.ts';
import { planOn } from './planOn.ts';

/** The hole that the page has open. */
export interface OpenHole {
  readonly ask: OpenAsk;
  readonly course?: string;
  readonly attribution?: string;
  readonly study: Study;
  readonly player: PlayerModel;
  /** For where the flag was last settled, or followed to. */
  plan: HolePlan;
}

/** Fetches a hole and a player, solves the hole and plans it. */
export async function openHole(ask: OpenAsk, fetched: Fetch, turn: Pick<Turn, 'pause'>): Promise<OpenHole> {
  const shelved = ask.ground.holes.find(({ hole }) => hole === ask.hole);
  if (shelved === undefined) throw new RangeError(`there is no hole ${ask.hole} on ${ask.ground.course}`);
  const [ground, file] = (await Promise.all([shelved.url, ask.player.url].map(fetched))) as [SentHole, PlayerFile];
  await turn.pause();
  const hole = receivedHole(ground);
  const player = playerModel(file);
  await turn.pause();
  const study = new Study(hole, player);
  const plan = await planOn(study, [{ state: { at: hole.ball, lie: 'tee' }, dropped: false }], turn);
  const { course, attribution } = ground;
  return {
    ask,
    ...(course === undefined ? {} : { course }),
    ...(attribution === undefined ? {} : { attribution }),
    study,
    player,
    plan,
  };
}
