import { createHash } from 'node:crypto';
import {
  type Fault,
  type Read,
  readPlayer,
  type Shelf,
  type ShelvedGround,
  type ShelvedPlayer,
} from '@leeway/contract';
import { canPlay, playerModel } from '@leeway/engine';
import { readGround } from '@leeway/formats';

/** A file as it was read: the name that faults are told under, and what is in it. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}

/** Files to put on the shelf. */
export interface ShelfFiles {
  readonly grounds: readonly NamedText[];
  /** Each player with the files of the shots behind the patterns. */
  readonly players: readonly (NamedText & { readonly shots: readonly NamedText[] })[];
}

/** The list that the page gets, and the files themselves, by id. */
export interface StockedShelf {
  readonly shelf: Shelf;
  readonly files: ReadonlyMap<string, string>;
}

/** The hole that the app opens on, where there is one of that number: the most telling one of the made-up course. */
const OPENING_HOLE = '7';

/** Reads every file, and lists them in the order given. Refused, with the faults of all files, when one of them cannot be played with. */
export function stockShelf(given: ShelfFiles): Read<StockedShelf> {
  const files = new Map<string, string>();
  const faults: Fault[] = [];
  const keep = (text: string): string => {
    const id = createHash('sha256').update(text).digest('hex').slice(0, 16);
    files.set(id, text);
    return id;
  };
  const grounds = given.grounds.flatMap(({ name, text }): ShelvedGround[] => {
    const read = readGround(text, name);
    faults.push(...read.faults);
    if (read.value === undefined) return [];
    const id = keep(text);
    const holes = read.value.holes.map((h) => ({
      hole: h.hole,
      ...(h.name === undefined ? {} : { name: h.name }),
      par: h.par,
    }));
    return [{ id, course: read.value.course ?? name, url: urlOf(id), holes }];
  });
  const players = given.players.flatMap(({ name, text, shots }): ShelvedPlayer[] => {
    const read = readPlayer(text, name);
    faults.push(...read.faults);
    if (read.value === undefined) return [];
    if (!canPlay(playerModel(read.value))) {
      const found = 'no pattern from the tee, or none from the fairway';
      faults.push({ code: 'cannot-play', level: 'refused', file: name, found, expected: 'patterns from both' });
      return [];
    }
    const { handicapIndex } = read.value;
    const id = keep(text);
    return [
      {
        id,
        name: read.value.name,
        ...(handicapIndex === undefined ? {} : { handicapIndex }),
        url: urlOf(id),
        shotUrls: shots.map((file) => urlOf(keep(file.text))),
      },
    ];
  });
  const [ground] = grounds;
  const [player] = players;
  if (ground === undefined || player === undefined || faults.some((f) => f.level === 'refused')) return { faults };
  const hole = (ground.holes.find((h) => h.hole === OPENING_HOLE) ?? ground.holes[0])?.hole ?? OPENING_HOLE;
  return {
    value: { shelf: { grounds, players, opening: { ground: ground.id, hole, player: player.id } }, files },
    faults,
  };
}

const urlOf = (id: string): string => `/api/files/${id}`;
