import { fittedPlayer, fitSession } from '@leeway/engine';
import { groupShots, readShots } from '@leeway/formats';
import { TOLVANE } from './course/course.ts';
import { groundFile } from './groundFile.ts';
import type { MadeUpPlayer } from './madeUpPlayer.ts';
import { playerOf } from './playerFile.ts';
import { PLAYERS } from './players.ts';
import { shotsFile } from './shotsFile.ts';

/** Every demo file that is made from this package's code, by its path in the package. `npm run make -w @leeway/demo` writes them. */
export function committedFiles(): { readonly [path: string]: string } {
  const files = PLAYERS.flatMap((player) => {
    const shots = shotsFile(player.swings, player.seed);
    return [
      [`shots/${player.file}.csv`, shots],
      [`players/${player.file}.json`, fitted(player, shots)],
    ] as const;
  });
  return { 'ground/tolvane.geojson': groundFile(TOLVANE), ...Object.fromEntries(files) };
}

/** The player as `leeway carries --player … --patterns` writes one: the patterns are fitted to the balls, not copied from the truth. */
function fitted(madeUp: MadeUpPlayer, shots: string): string {
  const player = playerOf(madeUp);
  const rows = readShots(shots, `${madeUp.file}.csv`, { units: 'yd' }).value ?? [];
  const { swings } = groupShots(rows, player.clubs ?? []);
  return `${JSON.stringify(fittedPlayer(player, fitSession(player, swings), 'yd'), null, 2)}\n`;
}
