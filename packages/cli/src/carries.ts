import { CARRIES_VERSION, type Fault, readPlayer } from '@leeway/contract';
import { ladderScene, type LadderGap, type Rung } from '@leeway/chart';
import {
  apartOf,
  carryEntry,
  type CarryEntry,
  type CarryGap,
  carryGaps,
  claimedOf,
  fittedPlayer,
  fitSession,
  isFullSwing,
  isStated,
  outOfPlace,
  type PlayerFile,
  type SwingFit,
  YARD_M,
} from '@leeway/engine';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { readCarriesInput, tell } from './carriesInput.ts';
import { carriesText } from './carriesText.ts';
import { mappedLengths, usualLengths } from './holeLengths.ts';
import { occasionsTold } from './occasionLines.ts';
import { DATA_OPTION } from './data.ts';
import { drawn, formOf, LIGHT_OPTION, lightOf } from './drawn.ts';
import { writeBeside } from './files.ts';
import { type Units, UNITS_OPTION } from './quantities.ts';

/** `leeway carries`: from shots to the ladder of carries, and to a Player file. */
export const carries: Command = {
  name: 'carries',
  summary: 'fit how far and how wide each club goes from files of shots',
  usage: [
    'leeway carries SHOTS… [--player P] [--handicap N] [--patterns FILE] [--out FILE.svg|FILE.pdf]',
    'leeway carries --data DIR --player NAME [--patterns FILE] [--out FILE.svg|FILE.pdf]',
    '',
    'SHOTS are CSV or TSV files with a heading row; club and carry are needed, side is wanted.',
    'Before a session on the range: nobody in front, and room for the club behind.',
  ],
  examples: [
    'leeway carries session.csv --handicap 14 --patterns kim.json',
    'leeway carries may.csv june.tsv --player kim.json --units m --json',
    'leeway carries --data ~/.leeway --player "Kim Aster"',
    'leeway carries flights.csv --map "Flight length=carry" --map "Dev.=side"',
  ],
  options: {
    data: DATA_OPTION,
    player: {
      kind: 'text',
      value: 'FILE',
      help: 'what is known already: handicap, clubs, lofts, claimed carries; with --data the name of a player',
    },
    handicap: { kind: 'text', value: 'N', help: 'handicap index; 15 is assumed when nothing says it' },
    units: { ...UNITS_OPTION, help: 'of columns that do not say, and of the text: yards (default) or metres' },
    ground: {
      kind: 'text',
      value: 'FILE',
      help: 'the course that is played: gaps are weighed by what its holes leave',
    },
    approaches: {
      kind: 'text',
      value: 'FILE',
      many: true,
      help: 'approaches of rounds: club, to flag, and past and right of it to the pitch mark, or missed; front, back, width of the green',
    },
    'all-logged': { kind: 'flag', help: 'every approach of these rounds is there, misses too; else doubt is wider' },
    map: { kind: 'text', value: '"HEADING=COLUMN"', many: true, help: 'what a heading means' },
    patterns: { kind: 'text', value: 'FILE', help: 'write a Player file ready for plan --player' },
    out: { kind: 'text', value: 'FILE', help: 'draw the ladder, as SVG or PDF by the ending' },
    light: LIGHT_OPTION,
    name: { kind: 'text', value: 'NAME', help: 'the player, in the Player file and among several in the shots' },
    force: { kind: 'flag', help: 'replace an existing file' },
  },
  run: runCarries,
};

async function runCarries(given: Given, io: Io): Promise<number> {
  const out = given.text('out');
  const form = out === undefined ? undefined : formOf(out);
  if (form === undefined && given.text('light') !== undefined) throw new Usage('--light goes with --out FILE');
  const light = lightOf(given, form ?? 'svg');
  if (given.flag('force') && given.text('patterns') === undefined && out === undefined)
    throw new Usage('--force goes with --patterns FILE or --out FILE');
  const input = await readCarriesInput(given, io);
  if (input === undefined) return 1;
  const { player, units } = input;
  const fits = fitSession(player, input.swings);
  const entries = fits
    .map((s): CarryEntry => carryEntry(s, claimedOf(player, s.club, s.swing)))
    .toSorted((a, b) => b.carryM.mean - a.carryM.mean);
  const apart = apartOf(player, fits);
  const ground = given.text('ground');
  const holes = ground === undefined ? usualLengths(entries) : await mappedLengths(ground);
  if (!('words' in holes)) {
    tell(holes, io);
    return 1;
  }
  const odd = oddClubs(player, fits, given.words[0] ?? '', units);
  tell(odd, io);
  const path = given.text('patterns');
  if (path !== undefined) {
    if (isStated(player)) {
      tell(
        [
          {
            code: 'stated-player',
            level: 'refused',
            file: given.text('player') ?? '',
            found: 'stated patterns',
            expected: 'a player without stated patterns, or no --patterns',
          },
        ],
        io,
      );
      return 1;
    }
    const text = `${JSON.stringify(fittedPlayer(player, fits, units), null, 2)}\n`;
    const own = readPlayer(text, path).faults.filter((f) => f.level === 'refused');
    const faults = own.length > 0 ? own : await writeBeside(path, text, { force: given.flag('force') });
    tell(faults, io);
    if (faults.length > 0) return 1;
    io.err(`${path}: written\n`);
  }
  const gaps = carryGaps(entries);
  if (out !== undefined && form !== undefined) {
    const rungs = entries.map((e): Rung => rungOf(e, fits));
    const scene = ladderScene({ player: player.name, units, rungs, gaps: gaps.map((g) => shaftOf(g, entries)) });
    const faults = await writeBeside(out, await drawn(scene, form, light), { force: given.flag('force') });
    tell(faults, io);
    if (faults.length > 0) return 1;
    io.err(`${out}: written\n`);
  }
  if (given.flag('json')) {
    const told = occasionsTold(fits[0]?.occasions);
    const document = {
      version: CARRIES_VERSION,
      entries,
      gaps,
      ...(apart.length > 0 && { apart: [...apart] }),
      ...told,
      faults: [...input.faults, ...odd],
    };
    io.out(`${JSON.stringify(document)}\n`);
  } else io.out(carriesText(player, entries, gaps, units, { apart, occasions: fits[0]?.occasions, holes }));
  return 0;
}

/** An entry with its balls, mishits told apart by the fit. */
function rungOf(entry: CarryEntry, fits: readonly SwingFit[]): Rung {
  const { club, swing, carryM, claimedM } = entry;
  const own = fits.find((s) => s.club === club && s.swing === swing);
  const chances = own?.fit.mishitChances ?? [];
  return {
    club,
    swing,
    full: isFullSwing(swing),
    carryM: carryM.mean,
    lo80M: carryM.lo80,
    hi80M: carryM.hi80,
    balls: (own?.now ?? []).map((b, i) => ({ carryM: b.carryM, mishit: (chances[i] ?? 0) > 0.5 })),
    ...(claimedM === undefined ? {} : { claimedM }),
  };
}

/** What of a gap no carry may reach: from where the shorter one may be to where the longer one may. */
function shaftOf({ fromM, toM }: CarryGap, entries: readonly CarryEntry[]): LadderGap {
  const at = (m: number): CarryEntry['carryM'] | undefined => entries.find((e) => e.carryM.mean === m)?.carryM;
  const [low, high] = [at(fromM)?.hi80 ?? fromM, at(toM)?.lo80 ?? toM];
  return low < high ? { fromM: low, toM: high } : { fromM, toM };
}

/** Clubs whose balls do not belong between those of the others, each as a note: the user decides. */
function oddClubs(player: PlayerFile, fits: readonly SwingFit[], file: string, units: Units): readonly Fault[] {
  const unitM = units === 'm' ? 1 : YARD_M;
  const whole = (m: number): string => (m / unitM).toFixed(0);
  return outOfPlace(player, fits).map(({ club, carryM, likelyM, sdM }) => ({
    code: 'club-out-of-place',
    level: 'note',
    file,
    at: club,
    found: `a ${club} that carries ${whole(carryM)} ${units}`,
    expected: `${whole(likelyM)} ±${whole(2 * sdM)}, by the other clubs`,
    done: 'kept; check the name of the club and the unit of its balls',
  }));
}
