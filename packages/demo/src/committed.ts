import { groundFile } from './groundFile.ts';
import { ODILE_VARGA, ODILE_VARGAS_SWINGS } from './odileVarga.ts';
import { playerOf } from './playerFile.ts';
import { SALTINGS } from './saltings.ts';
import { shotsFile } from './shotsFile.ts';

/** Every demo file that is made from this package's code, by its path in the package. `npm run make -w @leeway/demo` writes them. */
export const committedFiles = (): { readonly [path: string]: string } => ({
  'ground/tolvane.geojson': groundFile([SALTINGS]),
  'shots/odile-varga.csv': shotsFile(ODILE_VARGAS_SWINGS, ODILE_VARGA.seed),
  'players/odile-varga.json': `${JSON.stringify(playerOf(ODILE_VARGA), null, 2)}\n`,
});
