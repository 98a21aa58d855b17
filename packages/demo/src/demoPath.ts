import { fileURLToPath } from 'node:url';

/** Where a file of the demo lies on this machine, from its path in the package. */
export const demoPath = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

/** The made-up course and player that the app opens on. */
export const DEMO = {
  ground: demoPath('ground/tolvane.geojson'),
  player: demoPath('players/odile-varga.json'),
  shots: demoPath('shots/odile-varga.csv'),
} as const;
