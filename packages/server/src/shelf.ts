import { createHash } from 'node:crypto';
import {
  type Fault,
  type Read,
  readPlayer,
  type SentBall,
  sentHole,
  type Shelf,
  type ShelvedGround,
  type ShelvedPlayer,
  type ShotRow,
} from '@leeway/contract';
import { canPlay, playerModel } from '@leeway/engine';
import { readGround, readShots } from '@leeway/formats';

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

/** The list that the page gets, and the JSON of what is on it, by id. */
export interface StockedShelf {
  readonly shelf: Shelf;
  readonly sent: ReadonlyMap<string, string>;
}

/** The hole that the app opens on, where there is one of that number: the most telling one of the made-up course. */
const OPENING_HOLE = '7';

/** Reads every file, and lists them in the order given. Refused, with the faults of all files, when one of them cannot be played with. */
export function stockShelf(files: ShelfFiles): Read<StockedShelf> {
  const shelf = new Stock();
  const grounds = files.grounds.flatMap((file) => shelf.ground(file));
  const players = files.players.flatMap((file) => shelf.player(file, file.shots));
  const { faults, sent } = shelf;
  const [ground] = grounds;
  const [player] = players;
  if (ground === undefined || player === undefined || faults.some((f) => f.level === 'refused')) return { faults };
  const hole = (ground.holes.find((h) => h.hole === OPENING_HOLE) ?? ground.holes[0])?.hole ?? OPENING_HOLE;
  const opening = { ground: ground.id, hole, player: player.id };
  return { value: { shelf: { grounds, players, opening }, sent }, faults };
}

class Stock {
  readonly faults: Fault[] = [];
  readonly sent = new Map<string, string>();

  ground({ name, text }: NamedText): ShelvedGround[] {
    const ground = this.noted(readGround(text, name));
    if (ground === undefined) return [];
    const holes = ground.holes.map((hole) => ({
      hole: hole.hole,
      ...(hole.name === undefined ? {} : { name: hole.name }),
      par: hole.par,
      url: urlOf(this.keep(sentHole(ground, hole))),
    }));
    return [{ id: hashOf(text), course: ground.course ?? name, holes, prepared: [] }];
  }

  player({ name, text }: NamedText, shots: readonly NamedText[]): ShelvedPlayer[] {
    const player = this.noted(readPlayer(text, name));
    if (player === undefined) return [];
    if (!canPlay(playerModel(player))) {
      const found = 'no pattern from the tee, or none from the fairway';
      this.faults.push({ code: 'cannot-play', level: 'refused', file: name, found, expected: 'patterns from both' });
      return [];
    }
    const { handicapIndex } = player;
    const ballUrls = shots.flatMap((file) => {
      const rows = this.noted(readShots(file.text, file.name, { units: 'yd' }));
      return rows === undefined ? [] : [urlOf(this.keep(rows.map(sentBall)))];
    });
    const index = handicapIndex === undefined ? {} : { handicapIndex };
    return [{ id: hashOf(text), name: player.name, ...index, url: urlOf(this.keep(player)), ballUrls }];
  }

  private noted<T>({ value, faults }: Read<T>): T | undefined {
    this.faults.push(...faults);
    return value;
  }

  private keep(what: unknown): string {
    const json = JSON.stringify(what);
    const id = hashOf(json);
    this.sent.set(id, json);
    return id;
  }
}

const sentBall = ({ club, swing, date, carryM, sideM }: ShotRow): SentBall => ({
  club,
  swing,
  ...(date === undefined ? {} : { date }),
  carryM,
  ...(sideM === undefined ? {} : { sideM }),
});

/** An id on the shelf, and of what is sent. */
const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 16);
const urlOf = (id: string): string => `/api/files/${id}`;
