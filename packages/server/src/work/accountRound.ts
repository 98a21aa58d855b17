import type { LedgerDocument, Read, RoundFile } from '@leeway/contract';
import type { PlayerFile } from '@leeway/engine';
import { ledgerOf, readGround } from '@leeway/formats';

/** What the account of a round is made from: plain data, so that it can be handed to a thread. */
export interface AccountAsked {
  readonly ground: { readonly file: string; readonly text: string };
  readonly player: PlayerFile;
  readonly round: RoundFile;
}

/** Accounts for one round; `tell` hears how far it is. Refused: ground that cannot be read, strokes that cannot be placed on it. */
export function accountRound(
  { ground, player, round }: AccountAsked,
  tell: (done: number, total: number) => void,
): Read<LedgerDocument> {
  const read = readGround(ground.text, ground.file);
  if (read.value === undefined) return { faults: read.faults };
  return ledgerOf({ player, holes: read.value.holes, rounds: [{ file: round.date ?? 'round', round }] }, tell);
}
