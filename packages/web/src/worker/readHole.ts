import { receivedHole, type SentHole } from '@leeway/contract';
import { type HoleGround, type PlayerFile, playerModel, type PlayerModel } from '@leeway/engine';
import type { OpenAsk } from '../asks.ts';
import type { Fetch } from './fetched.ts';

/** A hole and a player, read. */
export interface ReadHole {
  readonly ask: OpenAsk;
  readonly ground: HoleGround;
  readonly course?: string;
  readonly attribution?: string;
  readonly player: PlayerModel;
}

/** Fetches a hole and a player. */
export async function readHole(ask: OpenAsk, fetched: Fetch): Promise<ReadHole> {
  const shelved = ask.ground.holes.find(({ hole }) => hole === ask.hole);
  if (shelved === undefined) throw new RangeError(`there is no hole ${ask.hole} on ${ask.ground.course}`);
  const [sent, file] = (await Promise.all([shelved.url, ask.player.url].map(fetched))) as [SentHole, PlayerFile];
  const { course, attribution } = sent;
  return {
    ask,
    ground: receivedHole(sent),
    ...(course === undefined ? {} : { course }),
    ...(attribution === undefined ? {} : { attribution }),
    player: playerModel(file),
  };
}
