import { type GroundFilePreview, HOUSE, newRecord, type Read } from '@leeway/contract';
import { lengthM } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { derivedId, get, put, type Store } from '@leeway/store';
import { digestOf } from './digest.ts';
import { utf8 } from './utf8.ts';

const MOST_FAULTS = 500;

/** Reads a ground file, to be looked at. Refused: what cannot be played on. */
export function readGroundFile(bytes: Uint8Array, file: string): Read<GroundFilePreview & { readonly text: string }> {
  const text = utf8(bytes, file);
  if (text.value === undefined) return { faults: text.faults };
  const { value, faults } = readGround(text.value, file);
  if (value === undefined) return { faults };
  const { course, attribution, holes } = value;
  const shown = {
    course: (course ?? file.replace(/^.*[/\\]|\.[^.]*$/g, '')).trim().slice(0, 80) || 'A course',
    ...(attribution === undefined ? {} : { attribution: attribution.slice(0, 500) }),
    holes: holes.map(({ hole, name, par, parGuessed, line }) => ({
      hole,
      ...(name === undefined ? {} : { name }),
      par,
      parGuessed,
      lengthM: lengthM(line),
    })),
    faults: faults.slice(0, MOST_FAULTS),
    seen: digestOf(bytes),
  };
  return { value: { ...shown, text: text.value }, faults: [] };
}

/** Keeps a ground file as it was seen, as a course of the house. Kept again it is harmless. */
export async function keepGroundFile(
  store: Store,
  bytes: Uint8Array,
  file: string,
  seen: string,
): Promise<Read<GroundFilePreview>> {
  const { value, faults } = readGroundFile(bytes, file);
  if (value === undefined) return { faults };
  const { text, ...shown } = value;
  if (shown.seen !== seen) {
    const found = 'another file than was looked at';
    return {
      faults: [{ code: 'not-as-seen', level: 'refused', file, found, expected: 'the file that was looked at' }],
    };
  }
  const id = derivedId(HOUSE, 'course', seen);
  const there = await get(store, HOUSE, id);
  const { course: name, attribution } = shown;
  const body = {
    name,
    ground: { file: file.slice(0, 255), text },
    ...(attribution === undefined ? {} : { attribution }),
  };
  const stored =
    there === undefined
      ? await put(store, [newRecord('course', { owner: HOUSE, id, madeAt: new Date().toISOString(), body })])
      : { value: [], faults: [] };
  if (stored.value === undefined) return { faults: stored.faults };
  return { value: { ...shown, kept: { course: id, already: there !== undefined } }, faults: [] };
}
