import { readPlayer } from '@leeway/contract';
import type { Turn } from '@leeway/desk';
import { canPlay, type HoleGround, type HolePlan, playerModel, type PlayerModel, Study } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import type { OpenAsk } from '../asks.ts';
import { type Fetch, valueOf } from './fetched.ts';
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

/** Reads the files of a hole and a player, solves the hole and plans it. Throws the refusals of either file. */
export async function openHole(ask: OpenAsk, fetched: Fetch, turn: Pick<Turn, 'pause'>): Promise<OpenHole> {
  const [groundText, playerText] = await Promise.all([fetched(ask.ground.url), fetched(ask.player.url)]);
  await turn.pause();
  const ground = valueOf(readGround(groundText, ask.ground.course, { hole: ask.hole }));
  const hole = ground.holes.find((h: HoleGround) => h.hole === ask.hole);
  if (hole === undefined) throw new Error(`there is no hole ${ask.hole} on ${ask.ground.course}`);
  const player = playerModel(valueOf(readPlayer(playerText, ask.player.name)));
  if (!canPlay(player)) throw new Error(`${player.name} has no pattern from the tee, or none from the fairway`);
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
