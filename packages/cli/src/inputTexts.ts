import { existsSync } from 'node:fs';
import type { Fault, Read } from '@leeway/contract';
import type { Given, Io } from './command.ts';
import { courseNamed, isFault, playerNamed, withStore } from './data.ts';
import { CAP_BYTES, readTextCapped } from './files.ts';

/** The texts of what `--player` and `--ground` name. */
export interface InputTexts {
  readonly player: Read<string>;
  readonly ground: Read<string>;
}

const NOTHING: Read<string> = { faults: [] };

/**
 * The Player file and the ground that the options name: files, or with `--data` what is kept under these names, and a file where nothing is. What is not
 * named is an empty read. `undefined` when the store cannot be opened, which has been told.
 */
export async function inputTexts(given: Given, io: Io): Promise<InputTexts | undefined> {
  const [player, ground] = [given.text('player'), given.text('ground')];
  const file = (path: string | undefined, kind: 'player' | 'ground'): Promise<Read<string>> =>
    path === undefined ? Promise.resolve(NOTHING) : readTextCapped(path, CAP_BYTES[kind]);
  if (given.text('data') === undefined)
    return { player: await file(player, 'player'), ground: await file(ground, 'ground') };
  let texts: InputTexts | undefined;
  const code = await withStore(given, io, async (store) => {
    const { storedPlayer } = await import('@leeway/server');
    const keptOr = async (
      path: string | undefined,
      kind: 'player' | 'ground',
      find: (name: string) => Promise<string | Fault>,
    ) => {
      if (path === undefined) return NOTHING;
      const kept = await find(path);
      if (typeof kept === 'string') return { value: kept, faults: [] };
      return existsSync(path) ? file(path, kind) : { faults: [kept] };
    };
    texts = {
      player: await keptOr(player, 'player', async (name) => {
        const found = await playerNamed(store, name);
        return isFault(found) ? found : JSON.stringify((await storedPlayer(store, found.profile.owner))?.file);
      }),
      ground: await keptOr(ground, 'ground', async (name) => {
        const found = await courseNamed(store, name);
        return isFault(found) ? found : found.ground.text;
      }),
    };
    return 0;
  });
  return code === 0 ? texts : undefined;
}
