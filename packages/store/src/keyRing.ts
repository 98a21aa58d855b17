import { randomBytes } from 'node:crypto';
import fs from 'node:fs';
import { join } from 'node:path';
import { syncFolder, writeDurably } from './files.ts';
import { KEY_BYTES, type Seal, sealOf } from './seal.ts';

/** The owners' keys, a file each in a folder that only this account can read. */
export interface KeyRing {
  /** The seal of an owner, undefined when its key is not here. */
  sealFor(owner: string): Seal | undefined;
  /** The seal of an owner, its key made first if there is none. When it returns the key is on stable storage. */
  sealMade(owner: string): Seal;
  /** Takes in a key from a copy. */
  add(owner: string, key: Uint8Array): void;
  /** Destroys an owner's key: its file is written over, synced and removed, and what was sealed with it is noise. */
  destroy(owner: string): void;
  keys(): ReadonlyMap<string, Uint8Array>;
}

const ENDING = '.key';

export function openKeyRing(folder: string): KeyRing {
  fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
  const seals = new Map<string, Seal>();
  const fileOf = (owner: string): string => join(folder, `${owner}${ENDING}`);

  const sealFor: KeyRing['sealFor'] = (owner) => {
    const held = seals.get(owner);
    if (held !== undefined) return held;
    const key = readKey(fileOf(owner));
    if (key === undefined) return undefined;
    const seal = sealOf(key);
    seals.set(owner, seal);
    return seal;
  };

  const add: KeyRing['add'] = (owner, key) => {
    writeDurably(folder, `${owner}${ENDING}`, key);
    seals.set(owner, sealOf(key));
  };

  return {
    sealFor,
    add,
    sealMade: (owner) => {
      const there = sealFor(owner);
      if (there !== undefined) return there;
      add(owner, randomBytes(KEY_BYTES));
      return sealFor(owner) ?? unreadable(fileOf(owner));
    },
    destroy: (owner) => {
      seals.delete(owner);
      if (!fs.existsSync(fileOf(owner))) return;
      overwrite(fileOf(owner));
      fs.rmSync(fileOf(owner));
      syncFolder(folder);
    },
    keys: () =>
      new Map(
        fs
          .readdirSync(folder)
          .filter((name) => name.endsWith(ENDING) && !name.startsWith('.'))
          .map((name) => [name.slice(0, -ENDING.length), readKey(join(folder, name)) ?? unreadable(name)]),
      ),
  };
}

function readKey(file: string): Uint8Array | undefined {
  if (!fs.existsSync(file)) return undefined;
  const key = fs.readFileSync(file);
  return key.length === KEY_BYTES ? key : unreadable(file);
}

function unreadable(file: string): never {
  throw new Error(`The key file ${file} cannot be read.`);
}

function overwrite(file: string): void {
  const handle = fs.openSync(file, 'r+');
  try {
    fs.writeSync(handle, randomBytes(KEY_BYTES), 0, KEY_BYTES, 0);
    fs.fsyncSync(handle);
  } finally {
    fs.closeSync(handle);
  }
}
