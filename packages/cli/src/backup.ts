import { join } from 'node:path';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { DATA_OPTION, told, withStore } from './data.ts';

/** `leeway backup`: everything as one sealed file, and the keys beside it. */
export const backup: Command = {
  name: 'backup',
  summary: 'write everything that a store keeps as one sealed file, with the keys beside it',
  usage: ['leeway backup [FILE] --data DIR'],
  examples: ['leeway backup --data ~/.leeway', 'leeway backup /media/stick/friday.backup --data ~/.leeway'],
  options: { data: DATA_OPTION },
  run: runBackup,
};

async function runBackup(given: Given, io: Io): Promise<number> {
  if (given.words.length > 1) throw new Usage('name one file to write');
  return withStore(given, io, async (store) => {
    const { backUp, KEY_FILE } = await import('@leeway/store');
    const usual = join(given.text('data') ?? '', 'backups', `${new Date().toISOString().replaceAll(':', '')}.backup`);
    const { value, faults } = await backUp(store, given.words[0] ?? usual);
    if (value === undefined) return told(faults, io);
    const { path, records } = value;
    io.err(`Keep ${KEY_FILE} beside it: with it the backup opens, without it nobody reads it.\n`);
    io.out(given.flag('json') ? `${JSON.stringify({ file: path, records })}\n` : `${path}: ${records} records\n`);
    return 0;
  });
}
