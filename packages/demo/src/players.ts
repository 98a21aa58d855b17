import type { MadeUpPlayer } from './madeUpPlayer.ts';
import { MAREK_OSTERBY } from './marekOsterby.ts';
import { ODILE_VARGA } from './odileVarga.ts';
import { WILMA_TOLLAND } from './wilmaTolland.ts';

/** The made-up players; the app opens on the first. */
export const PLAYERS: readonly MadeUpPlayer[] = [ODILE_VARGA, MAREK_OSTERBY, WILMA_TOLLAND];
