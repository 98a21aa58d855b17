import { type Fault, type GroundSummary, parseJson, readPlayer } from '@leeway/contract';
import type { PlayerFile } from '@leeway/engine';
import { describeGround, readShots } from '@leeway/formats';

type FileKind = 'player' | 'shot' | 'ground' | 'round' | 'plan';

/** What a file was found to be, what it holds in a few words, and its faults. */
export interface CheckedFile {
  readonly kind?: FileKind;
  readonly holds?: string;
  readonly faults: readonly Fault[];
}

/** Tells what kind of file this is from what is in it, reads it as that, and gives its faults. */
export function checkBytes(bytes: Uint8Array, file: string): CheckedFile {
  const text = utf8(bytes);
  if (text === undefined) return checkShots(bytes, file);
  const first = /[^\s\uFEFF]/.exec(text)?.[0];
  if (first === '<') return checkGround(text, file);
  if (first !== '{' && first !== '[') return checkShots(bytes, file);
  const json = parseJson(text, file);
  if (json.value === undefined) return { faults: json.faults };
  const kind = kindOfJson(json.value);
  if (kind === 'ground') return checkGround(text, file);
  if (kind === 'player') return checkPlayer(text, file);
  const found = kind === undefined ? 'JSON of no known kind' : `a ${kind} file, which cannot be checked yet`;
  const fault: Fault = {
    code: 'unknown-kind',
    level: 'refused',
    file,
    found,
    expected: 'a player, shot or ground file',
  };
  return { ...(kind === undefined ? {} : { kind }), faults: [fault] };
}

/** JSON is told by its keys; arrays and bare values are none of ours. */
function kindOfJson(value: unknown): Exclude<FileKind, 'shot'> | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  const has = (...keys: readonly string[]): boolean => keys.some((key) => Object.hasOwn(value, key));
  if (has('elements', 'features', 'geometry')) return 'ground';
  if (has('holes')) return has('day') ? 'plan' : 'round';
  return has('name', 'clubs', 'patterns', 'handicapIndex', 'putting') ? 'player' : undefined;
}

function checkGround(text: string, file: string): CheckedFile {
  const { value, faults } = describeGround(text, file);
  return { kind: 'ground', ...(value === undefined ? {} : { holds: groundWords(value) }), faults };
}

function checkPlayer(text: string, file: string): CheckedFile {
  const { value, faults } = readPlayer(text, file);
  return { kind: 'player', ...(value === undefined ? {} : { holds: playerWords(value) }), faults };
}

function checkShots(bytes: Uint8Array, file: string): CheckedFile {
  const { value, faults } = readShots(bytes, file, { units: 'yd' });
  return { kind: 'shot', ...(value === undefined ? {} : { holds: count(value.length, 'ball') }), faults };
}

/** The text of a UTF-8 file; tables of shots alone come in other encodings. */
function utf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function groundWords({ course, features, holes }: GroundSummary): string {
  const holed = `${count(holes.length, 'hole')}, ${count(features, 'feature')}`;
  return course === undefined ? holed : `${course}, ${holed}`;
}

const playerWords = ({ name, clubs = [], patterns = [] }: PlayerFile): string =>
  `${name}, ${count(clubs.length, 'club')}, ${count(patterns.length, 'pattern')}`;

const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
