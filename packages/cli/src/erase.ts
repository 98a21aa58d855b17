import { type Command, type Given, type Io, Usage } from './command.ts';
import { DATA_OPTION, isFault, playerNamed, told, withStore } from './data.ts';
import { needed } from './planInput.ts';

/** `leeway erase`: a player, for good. */
export const erase: Command = {
  name: 'erase',
  summary: 'erase a player for good: every record, every queued job, and the key that opens old backups of theirs',
  usage: ['leeway erase --data DIR --player NAME [--confirm NAME]'],
  examples: ['leeway erase --data ~/.leeway --player "Kim Aster"'],
  options: {
    data: DATA_OPTION,
    player: { kind: 'text', value: 'NAME', help: 'the player’s name, or id' },
    confirm: { kind: 'text', value: 'NAME', help: 'the player’s name again, where nobody can be asked for it' },
  },
  run: runErase,
};

async function runErase(given: Given, io: Io): Promise<number> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const name = needed(given, 'player');
  const confirmed = given.text('confirm');
  if (confirmed === undefined && io.ask === undefined)
    throw new Usage('nobody can be asked here: --confirm NAME says it is meant');
  return withStore(given, io, async (store) => {
    const { erasePlayer } = await import('@leeway/store');
    const player = await playerNamed(store, name);
    if (isFault(player)) return told([player], io);
    const { owner, body } = player.profile;
    const typed =
      confirmed ??
      (await io.ask?.(`This cannot be undone. Type the name of the player to erase, ${body.name}: `)) ??
      '';
    if (typed.trim() !== body.name) {
      io.err(`leeway erase: found "${typed}"; expected "${body.name}"; nothing is erased\n`);
      return 1;
    }
    const { value, faults } = await erasePlayer(store, owner);
    if (value === undefined) return told(faults, io);
    for (const path of value.unreached) io.err(`${path}: this copy of the keys could not be reached; destroy it\n`);
    io.out(
      given.flag('json') ? `${JSON.stringify(value)}\n` : `${value.records} records and ${value.jobs} jobs erased\n`,
    );
    return 0;
  });
}
