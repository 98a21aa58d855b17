import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { dirname, join, relative, sep } from 'node:path';

/**
 * A disk that can lose its power. While it records, every change that this process makes under a folder is written down: writes, lengths, names,
 * syncs. From the list it makes the folder as it may be found after the power went at some point:
 *
 * - what was written to a file before its last sync is there; of what was written after, any page of 4 KiB may be missing;
 * - names (made, renamed, removed) are there in order up to some point at or after the last sync of anything, as a journalling file system keeps them.
 */
export interface Recording {
  /** Notes that something was acknowledged here. */
  mark(what: string): void;
  stop(): void;
  readonly events: readonly Event[];
  /** The files that were there at the start, by path, with their numbers in the events. */
  readonly files: ReadonlyMap<string, number>;
}

type Event =
  | { readonly kind: 'write'; readonly file: number; readonly at: number; readonly bytes: Buffer }
  | { readonly kind: 'length'; readonly file: number; readonly bytes: number }
  | { readonly kind: 'sync'; readonly file: number | undefined }
  | { readonly kind: 'file'; readonly path: string; readonly file: number }
  | { readonly kind: 'folder'; readonly path: string }
  | { readonly kind: 'rename'; readonly from: string; readonly to: string }
  | { readonly kind: 'remove'; readonly path: string }
  | { readonly kind: 'mark'; readonly what: string };

const PAGE = 4096;

/** The calls that change a disk, of those the embedded engine and the store make. */
const PATCHED = [
  'openSync',
  'closeSync',
  'writeSync',
  'writeFileSync',
  'ftruncateSync',
  'truncateSync',
  'fsyncSync',
  'mkdirSync',
  'renameSync',
  'unlinkSync',
  'rmSync',
  'rmdirSync',
] as const;

export function record(folder: string): Recording {
  const events: Event[] = [];
  const original = Object.fromEntries(PATCHED.map((name) => [name, fs[name]])) as Pick<typeof fs, (typeof PATCHED)[number]>;
  const within = (path: unknown): string | undefined => {
    const inside = relative(folder, String(path));
    return inside.startsWith('..') ? undefined : inside.split(sep).join('/');
  };
  /** Which file stands under a path, and which a handle is of. */
  const names = new Map<string, number>();
  const handles = new Map<number, { readonly file: number | undefined; readonly path: string }>();
  let files = 0;

  const fileAt = (path: string): number => {
    const known = names.get(path);
    if (known !== undefined) return known;
    const file = ++files;
    names.set(path, file);
    return file;
  };

  for (const entry of fs.readdirSync(folder, { recursive: true, withFileTypes: true }))
    if (entry.isFile()) fileAt(within(join(entry.parentPath, entry.name)) ?? '');

  const atStart = new Map(names);

  const open: typeof fs.openSync = (path, flags, mode) => {
    const inside = within(path);
    const was = inside !== undefined && fs.existsSync(path);
    const handle = original.openSync(path, flags, mode);
    if (inside === undefined) return handle;
    const isFile = fs.fstatSync(handle).isFile();
    if (isFile && !was) events.push({ kind: 'file', path: inside, file: fileAt(inside) });
    const file = isFile ? fileAt(inside) : undefined;
    handles.set(handle, { file, path: inside });
    const cuts = typeof flags === 'string' ? flags.startsWith('w') : ((flags ?? 0) & fs.constants.O_TRUNC) !== 0;
    if (file !== undefined && was && cuts) events.push({ kind: 'length', file, bytes: 0 });
    return handle;
  };

  const write = (handle: number, data: NodeJS.ArrayBufferView | string, ...rest: readonly unknown[]): number => {
    const held = handles.get(handle);
    if (held?.file === undefined) return Reflect.apply(original.writeSync, fs, [handle, data, ...rest]) as number;
    if (typeof data === 'string') throw new Error('The recorder reads no texts.');
    const [offset = 0, length = data.byteLength, position] = rest as readonly (number | null | undefined)[];
    const from = offset ?? 0;
    const wrote = original.writeSync(handle, data, from, length ?? undefined, position ?? undefined);
    if (position === undefined || position === null) throw new Error('The recorder follows no positions.');
    const bytes = Buffer.from(Buffer.from(data.buffer, data.byteOffset + from, wrote));
    events.push({ kind: 'write', file: held.file, at: position, bytes });
    return wrote;
  };

  const patches: { readonly [name: string]: unknown } = {
    openSync: open,
    closeSync: (handle: number) => {
      handles.delete(handle);
      original.closeSync(handle);
    },
    writeSync: write,
    writeFileSync: (target: number | string, data: string | Uint8Array, options?: fs.WriteFileOptions) => {
      if (typeof target === 'number' ? !handles.has(target) : within(target) === undefined) {
        original.writeFileSync(target, data, options);
        return;
      }
      const handle = typeof target === 'number' ? target : open(target, 'w', 0o600);
      write(handle, Buffer.from(data), 0, Buffer.from(data).length, 0);
      if (typeof target !== 'number') fs.closeSync(handle);
    },
    ftruncateSync: (handle: number, bytes = 0) => {
      original.ftruncateSync(handle, bytes);
      const file = handles.get(handle)?.file;
      if (file !== undefined) events.push({ kind: 'length', file, bytes: bytes ?? 0 });
    },
    truncateSync: (path: string, bytes = 0) => {
      original.truncateSync(path, bytes);
      const inside = within(path);
      if (inside !== undefined) events.push({ kind: 'length', file: fileAt(inside), bytes: bytes ?? 0 });
    },
    fsyncSync: (handle: number) => {
      original.fsyncSync(handle);
      const held = handles.get(handle);
      if (held !== undefined) events.push({ kind: 'sync', file: held.file });
    },
    mkdirSync: (path: string, options?: fs.MakeDirectoryOptions) => {
      const made = original.mkdirSync(path, options);
      const inside = within(path);
      if (inside !== undefined) events.push({ kind: 'folder', path: inside });
      return made;
    },
    renameSync: (from: string, to: string) => {
      original.renameSync(from, to);
      const [before, after] = [within(from), within(to)];
      if (before === undefined || after === undefined) return;
      const file = names.get(before);
      names.delete(before);
      if (file === undefined) names.delete(after);
      else names.set(after, file);
      events.push({ kind: 'rename', from: before, to: after });
    },
    ...Object.fromEntries(
      (['unlinkSync', 'rmSync', 'rmdirSync'] as const).map((name) => [
        name,
        (path: string, ...rest: readonly unknown[]) => {
          Reflect.apply(original[name], fs, [path, ...rest]);
          const inside = within(path);
          if (inside === undefined) return;
          names.delete(inside);
          events.push({ kind: 'remove', path: inside });
        },
      ]),
    ),
  };
  Object.assign(fs, patches);
  syncBuiltinESMExports();
  return {
    events,
    files: atStart,
    mark: (what) => void events.push({ kind: 'mark', what }),
    stop: () => {
      Object.assign(fs, original);
      syncBuiltinESMExports();
    },
  };
}

/** What was acknowledged before a point of a recording. */
export const markedBefore = (events: readonly Event[], point: number): readonly string[] =>
  events.slice(0, point).flatMap((event) => (event.kind === 'mark' ? [event.what] : []));

/**
 * Writes the folder as it may be found when the power went at a point of a recording. `before` is a copy of the folder as it was at its start;
 * `random` gives numbers in [0, 1) and decides what is lost.
 */
export function afterPowerLoss(
  before: string,
  { events, files }: Pick<Recording, 'events' | 'files'>,
  point: number,
  random: () => number,
  into: string,
): void {
  const happened = events.slice(0, point);
  const lastSync = happened.findLastIndex(({ kind }) => kind === 'sync');
  const namesUpTo = lastSync + 1 + Math.floor(random() * (happened.length - lastSync));
  const lastSyncOf = new Map<number, number>();
  happened.forEach((event, i) => {
    if (event.kind === 'sync' && event.file !== undefined) lastSyncOf.set(event.file, i);
  });

  fs.cpSync(before, into, { recursive: true });
  const paths = new Map(files);
  const contents = new Map<number, Buffer>([...files].map(([path, file]) => [file, fs.readFileSync(join(before, path))]));
  const touched = new Set(paths.keys());

  happened.forEach((event, i) => {
    if (event.kind === 'write' || event.kind === 'length') {
      const isSynced = i < (lastSyncOf.get(event.file) ?? -1);
      contents.set(event.file, changed(contents.get(event.file) ?? Buffer.alloc(0), event, () => isSynced || random() < 0.5));
    } else if (i < namesUpTo) applyName(event, paths, touched, into);
  });
  for (const path of touched) {
    const file = paths.get(path);
    if (file === undefined) fs.rmSync(join(into, path), { force: true, recursive: true });
    else {
      fs.mkdirSync(dirname(join(into, path)), { recursive: true });
      fs.writeFileSync(join(into, path), contents.get(file) ?? '');
    }
  }
}

/** A file's content after a change, of which `arrives` says page by page whether it reached the disk. */
function changed(
  content: Buffer,
  event: Extract<Event, { readonly kind: 'write' | 'length' }>,
  arrives: () => boolean,
): Buffer {
  if (event.kind === 'length') return arrives() ? resized(content, event.bytes) : content;
  const { at, bytes } = event;
  const grown = resized(content, Math.max(content.length, at + bytes.length));
  for (let from = 0; from < bytes.length; from += PAGE)
    if (arrives()) bytes.copy(grown, at + from, from, Math.min(from + PAGE, bytes.length));
  return grown;
}

function resized(content: Buffer, bytes: number): Buffer {
  if (content.length === bytes) return content;
  const other = Buffer.alloc(bytes);
  content.copy(other);
  return other;
}

function applyName(event: Event, paths: Map<string, number>, touched: Set<string>, into: string): void {
  if (event.kind === 'folder') fs.mkdirSync(join(into, event.path), { recursive: true });
  else if (event.kind === 'file') {
    paths.set(event.path, event.file);
    touched.add(event.path);
  } else if (event.kind === 'rename') {
    const file = paths.get(event.from);
    paths.delete(event.from);
    if (file !== undefined) paths.set(event.to, file);
    touched.add(event.to);
  } else if (event.kind === 'remove') paths.delete(event.path);
}
