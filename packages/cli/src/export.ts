import { type Command, type Given, type Io, Usage } from './command.ts';
import { DATA_OPTION, isFault, playerNamed, told, withStore } from './data.ts';
import { writeBeside } from './files.ts';
import { needed } from './planInput.ts';

/** `leeway export`: one player's whole record as a file. */
export const exportRecord: Command = {
  name: 'export',
  summary: 'write one player’s whole record as a file, which leeway keep takes in elsewhere',
  usage: ['leeway export --data DIR --player NAME --out FILE [--force]'],
  examples: ['leeway export --data ~/.leeway --player "Kim Aster" --out kim-record.json'],
  options: {
    data: DATA_OPTION,
    player: { kind: 'text', value: 'NAME', help: 'the player’s name, or id' },
    out: { kind: 'text', value: 'FILE', help: 'the file to write; it is not sealed' },
    force: { kind: 'flag', help: 'replace an existing file' },
  },
  run: runExport,
};

async function runExport(given: Given, io: Io): Promise<number> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const [name, out] = [needed(given, 'player'), needed(given, 'out')];
  return withStore(given, io, async (store) => {
    const { exportPlayer } = await import('@leeway/store');
    const player = await playerNamed(store, name);
    if (isFault(player)) return told([player], io);
    const text = (await exportPlayer(store, player.profile.owner)) ?? '';
    const faults = await writeBeside(out, text, { force: given.flag('force') });
    if (faults.length > 0) return told(faults, io);
    io.out(given.flag('json') ? `${JSON.stringify({ file: out })}\n` : `${out}: written\n`);
    return 0;
  });
}
