import { fittedPlayer, fitSession } from '@leeway/engine';
import { groupShots, readShots } from '@leeway/formats';
import { groundFile } from './groundFile.ts';
import { ODILE_VARGA, ODILE_VARGAS_SWINGS } from './odileVarga.ts';
import { playerOf } from './playerFile.ts';
import { TOLVANE } from './course/course.ts';
import { shotsFile } from './shotsFile.ts';

/** Every demo file that is made from this package's code, by its path in the package. `npm run make -w @leeway/demo` writes them. */
export function committedFiles(): { readonly [path: string]: string } {
  const shots = shotsFile(ODILE_VARGAS_SWINGS, ODILE_VARGA.seed);
  return {
    'ground/tolvane.geojson': groundFile(TOLVANE),
    'shots/odile-varga.csv': shots,
    'players/odile-varga.json': fitted(shots),
  };
}

/** The player as `leeway carries --player … --patterns` writes her: her patterns are fitted to her balls, not copied from the truth. */
function fitted(shots: string): string {
  const player = playerOf(ODILE_VARGA);
  const rows = readShots(shots, 'odile-varga.csv', { units: 'yd' }).value ?? [];
  const { swings } = groupShots(rows, player.clubs ?? []);
  return `${JSON.stringify(fittedPlayer(player, fitSession(player, swings), 'yd'), null, 2)}\n`;
}
