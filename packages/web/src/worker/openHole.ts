import { receivedHole, type SentHole } from '@leeway/contract';
import type { Turn } from '@leeway/desk';
import { type HoleGround, type HolePlan, type PlayerFile, playerModel, type PlayerModel, Study } from '@leeway/engine';
import type { OpenAsk } from '../asks.ts';
import type { Fetch } from './fetched.ts';
import { planOn } from './planOn.ts';

/** A hole and a player, read. */
export interface ReadHole {
  readonly ask: OpenAsk;
  readonly ground: HoleGround;
  readonly course?: string;
  readonly attribution?: string;
  readonly player: PlayerModel;
}

/** The hole that the page has open, solved. */
export interface OpenHole extends ReadHole {
  readonly study: Study;
  /** For where the flag was last settled, or followed to. */
  plan: HolePlan;
  /** The whole plan is for the flag where it is, and as good as from scratch. */
  settled: boolean;
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

/** Solves a hole, and plans it from the tee. */
export async function solveRead(read: ReadHole, turn: Pick<Turn, 'pause'>): Promise<OpenHole> {
  const { ground, player } = read;
  const study = new Study(ground, player);
  return { ...read, study, plan: await planFromTee(study, turn), settled: true };
}

/** The same hole opened again, in other units: the study is kept, and its flag put back where the map has it. */
export async function reopen(open: OpenHole, ask: OpenAsk, turn: Pick<Turn, 'pause'>): Promise<OpenHole> {
  const { study, ground } = open;
  if (study.ground.flag !== ground.flag) study.moveFlag(ground.flag, 'settled');
  return { ...open, ask, plan: await planFromTee(study, turn), settled: true };
}

const planFromTee = (study: Study, turn: Pick<Turn, 'pause'>): Promise<HolePlan> =>
  planOn(study, [{ state: { at: study.ground.ball, lie: 'tee' }, dropped: false }], turn);
