import type { Fault, Read } from '@leeway/contract';

/** What a fault says, without its file and place. */
export interface FaultText {
  readonly code: string;
  readonly level: Fault['level'];
  readonly found: string;
  readonly expected: string;
  readonly done?: string;
}

/** Leaves a hole out, or refuses the file when it is the only hole asked for; gives undefined. */
export type LeaveOut = (code: string, found: string, expected: string) => undefined;

/** Places written out before the rest are only counted. */
const PLACES_SHOWN = 4;

/** Faults of one file as they are met. Those that say the same of several features come out as one, with the places and a count. */
export interface FaultBook {
  /** Enters a fault; gives undefined, so that a reader can end with it. */
  add(text: FaultText, at?: string): undefined;
  /** Takes in faults that are whole already. */
  take(faults: readonly Fault[]): undefined;
  readonly file: string;
  readonly refused: boolean;
  faults(): Fault[];
}

export function faultBook(file: string): FaultBook {
  const entries = new Map<string, { readonly text: FaultText; readonly places: Set<string> }>();
  const taken: Fault[] = [];
  return {
    file,
    add(text, at) {
      const key = [text.code, text.level, text.found, text.expected, text.done ?? ''].join('\n');
      const entry = entries.get(key) ?? { text, places: new Set<string>() };
      if (at !== undefined) entry.places.add(at);
      entries.set(key, entry);
      return undefined;
    },
    take(faults) {
      taken.push(...faults);
      return undefined;
    },
    get refused() {
      return [...taken, ...[...entries.values()].map((e) => e.text)].some((f) => f.level === 'refused');
    },
    faults: () => [
      ...taken,
      ...[...entries.values()].map(({ text, places }) => ({
        ...text,
        file,
        ...(places.size > 0 ? { at: listed([...places]) } : {}),
      })),
    ],
  };
}

const listed = (places: readonly string[]): string => {
  const shown = places.slice(0, PLACES_SHOWN).join(', ');
  const more = places.length - PLACES_SHOWN;
  return more > 0 ? `${shown} and ${more} more (${places.length} in all)` : shown;
};

/** Closes a book: the value stands unless something was refused. */
export const closeBook = <T>(book: FaultBook, value: T | undefined): Read<T> =>
  value === undefined || book.refused ? { faults: book.faults() } : { value, faults: book.faults() };
