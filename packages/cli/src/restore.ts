import { dirname, join } from 'node:path';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { DATA_OPTION, told, withStore } from './data.ts';

/** `leeway restore`: a backup into an empty store. */
export const restore: Command = {
  name: 'restore',
  summary: 'restore a backup into an empty store',
  usage: ['leeway restore FILE --data DIR [--keys FILE]'],
  examples: ['leeway restore /media/stick/friday.backup --data ~/.leeway'],
  options: {
    data: DATA_OPTION,
    keys: { kind: 'text', value: 'FILE', help: 'the keys; keys.json beside the backup unless said' },
  },
  run: runRestore,
};

async function runRestore(given: Given, io: Io): Promise<number> {
  const [path, ...more] = given.words;
  if (path === undefined || more.length > 0) throw new Usage('name one backup');
  return withStore(given, io, async (store) => {
    const { KEY_FILE, restore: restoreInto } = await import('@leeway/store');
    const { value, faults } = await restoreInto(store, path, given.text('keys') ?? join(dirname(path), KEY_FILE));
    if (value === undefined) return told(faults, io);
    const left = value.leftOut === 0 ? '' : `; ${value.leftOut} of players erased since are left out`;
    io.out(given.flag('json') ? `${JSON.stringify(value)}\n` : `${value.records} records restored${left}\n`);
    return 0;
  });
}
