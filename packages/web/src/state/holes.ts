import type { Shelf, ShelvedGround } from '@leeway/contract';
import type { Open } from './open.ts';
import type { PlanState } from './plan.ts';

type ShelvedHole = ShelvedGround['holes'][number];

/** The open hole as it is shelved, with its neighbours on the card. */
export function holesRound({ ground, hole }: Open): {
  readonly hole?: ShelvedHole;
  readonly before?: ShelvedHole;
  readonly after?: ShelvedHole;
} {
  const at = ground.holes.findIndex((h) => h.hole === hole);
  const [here, before, after] = [ground.holes[at], ground.holes[at - 1], at < 0 ? undefined : ground.holes[at + 1]];
  return {
    ...(here === undefined ? {} : { hole: here }),
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
  };
}

/** Turns to another ground, at its first hole. */
export function turnToGround(state: PlanState, id: string): void {
  const ground = state.shelf.grounds.find((g) => g.id === id);
  const hole = ground?.holes[0]?.hole;
  if (ground !== undefined && hole !== undefined) state.turnTo({ ground, hole });
}

/** What is asked for, as far as it is on the shelf; else what the shelf opens on. `undefined` with an empty shelf. */
export function openOn(
  shelf: Shelf,
  wanted: { readonly ground?: string; readonly hole?: string; readonly player?: string },
): Open | undefined {
  const { opening } = shelf;
  const byId = <T extends { readonly id: string }>(
    all: readonly T[],
    id: string | undefined,
    usual: string,
  ): T | undefined => all.find((one) => one.id === id) ?? all.find((one) => one.id === usual) ?? all[0];
  const ground = byId(shelf.grounds, wanted.ground, opening.ground);
  const player = byId(shelf.players, wanted.player, opening.player);
  const numbered = (hole: string | undefined) => ground?.holes.find((h) => h.hole === hole);
  const hole = (numbered(wanted.hole) ?? numbered(opening.hole) ?? ground?.holes[0])?.hole;
  return ground === undefined || player === undefined || hole === undefined ? undefined : { ground, hole, player };
}
