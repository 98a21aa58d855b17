import { readPlayer, readRound, type RoundFile } from '@leeway/contract';
import { TOUR_INDEX } from '@leeway/engine';
import { ledgerOf, readGround } from '@leeway/formats';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { CAP_BYTES, readTextCapped } from './files.ts';
import { ledgerText } from './ledgerText.ts';
import { needed, tellFaults } from './planInput.ts';

/** `leeway ledger`: the account of rounds. */
export const ledger: Command = {
  name: 'ledger',
  summary: 'where the strokes of rounds went: choosing, execution, short game, putts',
  usage: ['leeway ledger --ground FILE --player FILE ROUND… [--baseline INDEX] [--json]'],
  examples: [
    'leeway ledger --ground course.osm --player kim.json may-14.json may-21.json',
    'leeway ledger --ground course.osm --player kim.json may-14.json --baseline tour --json',
  ],
  options: {
    ground: { kind: 'text', value: 'FILE', help: 'mapped ground: GeoJSON, OSM XML, or the JSON of an OSM query' },
    player: { kind: 'text', value: 'FILE', help: 'the player file' },
    baseline: {
      kind: 'text',
      value: 'INDEX',
      help: 'handicap index to gain strokes on, -5.5 to 30, or tour; the player’s own unless said',
    },
  },
  run: runLedger,
};

async function runLedger(given: Given, io: Io): Promise<number> {
  if (given.words.length === 0) throw new Usage('name a round file');
  const groundPath = needed(given, 'ground');
  const playerPath = needed(given, 'player');
  const stated = statedIndex(given);
  const groundText = await readTextCapped(groundPath, CAP_BYTES.ground);
  const playerText = await readTextCapped(playerPath, CAP_BYTES.player);
  const ground = groundText.value === undefined ? undefined : readGround(groundText.value, groundPath);
  const file = playerText.value === undefined ? undefined : readPlayer(playerText.value, playerPath);
  const rounds: { readonly file: string; readonly round: RoundFile }[] = [];
  const faults = [groundText, ground, playerText, file].flatMap((read) => read?.faults ?? []);
  for (const path of given.words) {
    const text = await readTextCapped(path, CAP_BYTES.player);
    const round = text.value === undefined ? undefined : readRound(text.value, path);
    faults.push(...text.faults, ...(round?.faults ?? []));
    if (round?.value !== undefined) rounds.push({ file: path, round: round.value });
  }
  tellFaults(faults, io, groundPath);
  if (ground?.value === undefined || file?.value === undefined || faults.some((f) => f.level === 'refused')) return 1;
  const read = ledgerOf(
    {
      player: file.value,
      holes: ground.value.holes,
      rounds,
      ...(stated === undefined ? {} : { baselineIndex: stated }),
    },
    progress(io),
  );
  tellFaults(read.faults, io, groundPath);
  if (read.value === undefined) return 1;
  const document = read.value;
  io.out(given.flag('json') ? `${JSON.stringify(document)}\n` : ledgerText(document));
  return 0;
}

function statedIndex(given: Given): number | undefined {
  const text = given.text('baseline')?.trim();
  if (text === undefined) return undefined;
  const index = text === 'tour' ? TOUR_INDEX : Number(text);
  if (text === '' || !(index >= TOUR_INDEX && index <= 30)) {
    throw new Usage(`--baseline: found "${text}"; expected a handicap index from -5.5 to 30, or tour`);
  }
  return index;
}

/** A tenth of the way at a time, on standard error. */
function progress(io: Io): (done: number, total: number) => void {
  let tenths = 0;
  return (done, total) => {
    const now = Math.floor((10 * done) / Math.max(1, total));
    if (now > tenths) io.err(`${10 * now} % of the account\n`);
    tenths = Math.max(tenths, now);
  };
}
