import type { Shelf } from '@leeway/contract';

/** Is a player one that is kept, not one of the made-up files? */
export const isKept = (player: Shelf['players'][number]): boolean => player.url.startsWith('/api/players/');

/** The shelf without what is made up or from files. */
export const ownOnly = ({ grounds, players, opening }: Shelf): Shelf => ({
  grounds: grounds.filter((ground) => ground.kept === true),
  players: players.filter(isKept),
  opening,
});
