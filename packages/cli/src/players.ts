import { type Command, type Given, type Io, Usage } from './command.ts';
import { DATA_OPTION, withStore } from './data.ts';

/** `leeway players`: who is kept. */
export const players: Command = {
  name: 'players',
  summary: 'list the players of a store, with what changed last',
  usage: ['leeway players --data DIR [--json]'],
  examples: ['leeway players --data ~/.leeway'],
  options: { data: DATA_OPTION },
  run: runPlayers,
};

async function runPlayers(given: Given, io: Io): Promise<number> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  return withStore(given, io, async (store) => {
    const { playerList } = await import('@leeway/store');
    const all = (await playerList(store)).map(({ profile: { owner, body }, latest }) => ({
      id: owner,
      name: body.name,
      ...(body.handicapIndex === undefined ? {} : { handicapIndex: body.handicapIndex }),
      ...(body.archived === undefined ? {} : { archived: true }),
      last: { kind: latest[0]?.kind ?? 'profile', at: latest[0]?.at ?? '' },
    }));
    if (given.flag('json')) io.out(`${JSON.stringify({ players: all })}\n`);
    else
      for (const { name, handicapIndex, archived, last } of all)
        io.out(
          `${name}${handicapIndex === undefined ? '' : `, ${handicapIndex}`}${archived ? ', archived' : ''}: ${last.kind} of ${last.at.slice(0, 10)}\n`,
        );
    return 0;
  });
}
