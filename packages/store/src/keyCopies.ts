import fs from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import * as z from 'zod';
import { idSchema, type Read } from '@leeway/contract';
import { writeDurably } from './files.ts';
import { KEY_BYTES } from './seal.ts';
import type { Store } from './store.ts';

/** A copy of the keys, as a file: what opens backups. There is one beside the backups, always written anew, never added to. */
const keyFileSchema = z.strictObject({
  format: z.literal('leeway keys'),
  version: z.literal(1),
  store: idSchema,
  /** Base64, by owner. */
  keys: z.record(idSchema, z.base64().length(Math.ceil(KEY_BYTES / 3) * 4)),
  erased: z.array(idSchema),
});

export interface KeyCopy {
  readonly keys: ReadonlyMap<string, Uint8Array>;
  readonly erased: ReadonlySet<string>;
}

/** Writes a copy of the keys, and remembers where, so that an erasure reaches it. */
export async function copyKeys(store: Store, path: string): Promise<void> {
  const full = resolve(path);
  await store.database.query('INSERT INTO leeway.key_copy (path) VALUES ($1) ON CONFLICT DO NOTHING', [full]);
  await writeCopy(store, full);
}

/** Writes every copy of the keys anew, without the erased; returns those that could not be. A copy that is gone is forgotten. */
export async function renewKeyCopies(store: Store): Promise<readonly string[]> {
  const unreached: string[] = [];
  for (const { path } of await store.database.query<{ path: string }>('SELECT path FROM leeway.key_copy')) {
    try {
      if (fs.existsSync(dirname(path))) await writeCopy(store, path);
      else unreached.push(path);
    } catch {
      unreached.push(path);
    }
  }
  return unreached;
}

async function writeCopy(store: Store, path: string): Promise<void> {
  const tombstones = await store.database.query<{ owner: string }>('SELECT owner FROM leeway.tombstone ORDER BY seq');
  const file: z.infer<typeof keyFileSchema> = {
    format: 'leeway keys',
    version: 1,
    store: store.id,
    keys: Object.fromEntries(
      [...store.keys.keys()].map(([owner, key]) => [owner, Buffer.from(key).toString('base64')]),
    ),
    erased: tombstones.map(({ owner }) => owner),
  };
  writeDurably(dirname(path), basename(path), `${JSON.stringify(file)}\n`);
}

/** Reads a copy of the keys. */
export function readKeyCopy(path: string): Read<KeyCopy> {
  const parsed = keyFileSchema.safeParse(jsonIn(path));
  if (!parsed.success)
    return {
      faults: [{ code: 'keys', level: 'refused', file: path, found: 'no copy of keys', expected: 'the file of keys' }],
    };
  const { keys, erased } = parsed.data;
  const read = new Map(Object.entries(keys).map(([owner, key]) => [owner, Buffer.from(key, 'base64')]));
  return { value: { keys: read, erased: new Set(erased) }, faults: [] };
}

function jsonIn(path: string): unknown {
  try {
    return JSON.parse(fs.readFileSync(path, 'utf8'));
  } catch {
    return undefined;
  }
}
