import type { Turn } from '@leeway/desk';
import { CALM, type Day, type HolePlan, REFERENCE, Study, type Wind } from '@leeway/engine';
import type { OpenAsk } from '../asks.ts';
import { planOn } from './planOn.ts';
import type { ReadHole } from './readHole.ts';

/** The hole that the page has open, solved. */
export interface OpenHole extends ReadHole {
  readonly study: Study;
  /** For where the flag was last settled, or followed to. */
  plan: HolePlan;
  /** The whole plan is for the flag where it is, and as good as from scratch. */
  settled: boolean;
}

/** Solves a hole, and plans it from the tee. */
export async function solveRead(read: ReadHole, turn: Pick<Turn, 'pause'>): Promise<OpenHole> {
  const { ground, player, ask } = read;
  const study = new Study(ground, player, dayOf(ask.wind));
  return { ...read, study, plan: await planFromTee(study, turn), settled: true };
}

/** The same hole opened again, in other units: the study is kept, and its flag put back where the map has it. */
export async function reopen(open: OpenHole, ask: OpenAsk, turn: Pick<Turn, 'pause'>): Promise<OpenHole> {
  const { study, ground } = open;
  if (study.ground.flag !== ground.flag) study.moveFlag(ground.flag, 'settled');
  study.turnWind(dayOf(ask.wind));
  return { ...open, ask, plan: await planFromTee(study, turn), settled: true };
}

/** The page's day: the reference day, but for its wind. */
export const dayOf = (wind: Wind = CALM): Day => ({ ...REFERENCE, wind });

const planFromTee = (study: Study, turn: Pick<Turn, 'pause'>): Promise<HolePlan> =>
  planOn(study, [{ state: { at: study.ground.ball, lie: 'tee' }, dropped: false }], turn);
