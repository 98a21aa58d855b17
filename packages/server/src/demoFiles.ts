import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { DEMO, DEMO_PLAYERS } from '@leeway/demo';
import type { NamedText, ShelfFiles } from './shelf.ts';

/** The made-up course and players, the ones that the app opens on first. */
export async function demoFiles(): Promise<ShelfFiles> {
  return {
    grounds: [await named(DEMO.ground)],
    players: await Promise.all(
      DEMO_PLAYERS.map(async ({ player, shots }) => ({ ...(await named(player)), shots: [await named(shots)] })),
    ),
  };
}

const named = async (path: string): Promise<NamedText> => ({
  name: basename(path),
  text: await readFile(path, 'utf8'),
});
