import { HOUSE, idSchema, type Kind } from '@leeway/contract';
import * as z from 'zod';

/** The part of an address that stands for each kind of record of a player's, and of the house's. */
export const PLAYER_PATHS = {
  profiles: 'profile',
  sessions: 'session',
  shots: 'shot',
  approaches: 'approach',
  patterns: 'fitted',
  plans: 'plan',
  notes: 'note',
  rounds: 'round',
  strokes: 'stroke',
  ledgers: 'ledger',
  withdrawals: 'withdrawal',
} as const satisfies { readonly [path: string]: Kind };

export const HOUSE_PATHS = {
  courses: 'course',
  'set-ups': 'setUp',
  notes: 'note',
  readings: 'reading',
  withdrawals: 'withdrawal',
} as const satisfies { readonly [path: string]: Kind };

const player = idSchema.refine((id) => id !== HOUSE, 'the id of a player');

export const ofPlayer = z.strictObject({ player });
export const recordOfPlayer = z.strictObject({ player, id: idSchema });
export const ofHouse = z.strictObject({});
export const recordOfHouse = z.strictObject({ id: idSchema });
