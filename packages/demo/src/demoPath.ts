import { fileURLToPath } from 'node:url';
import { PLAYERS } from './players.ts';

/** Where a file of the demo lies on this machine, from its path in the package. */
export const demoPath = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

/** The made-up course and player that the app opens on. */
export const DEMO = {
  ground: demoPath('ground/tolvane.geojson'),
  player: demoPath('players/odile-varga.json'),
  shots: demoPath('shots/odile-varga.csv'),
} as const;

/** The files of the made-up players, the one of `DEMO` first: name as written, Player file and shot file. */
export const DEMO_PLAYERS = PLAYERS.map(({ name, file }) => ({
  name,
  player: demoPath(`players/${file}.json`),
  shots: demoPath(`shots/${file}.csv`),
}));
