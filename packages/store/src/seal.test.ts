import { expect, test } from 'vitest';
import { KEY_BYTES, sealOf } from './seal.ts';
import { newId, noteOf } from './testdata/records.ts';

const seal = sealOf(new Uint8Array(KEY_BYTES).fill(7));
const other = sealOf(new Uint8Array(KEY_BYTES).fill(8));
const note = noteOf(newId(), 'Leaves the face open.', newId());

test('what is closed opens as it was', () => {
  expect(seal.open(seal.close(note))).toEqual(note);
});

test('a long text takes less room sealed, and opens as it was', () => {
  const long = noteOf(newId(), 'Takes the club back inside, every time. '.repeat(500));
  const closed = seal.close(long);
  expect(closed.sealed.length).toBeLessThan(1000);
  expect(seal.open(closed)).toEqual(long);
});

test('the same content has one digest and never the same bytes', () => {
  const [one, two] = [seal.close(note), seal.close({ ...note })];
  expect(one.digest).toEqual(two.digest);
  expect(one.sealed).not.toEqual(two.sealed);
  expect(other.close(note).digest).not.toEqual(one.digest);
  expect(seal.close({ ...note, madeAt: '2026-05-14T09:30:01Z' }).digest).not.toEqual(one.digest);
});

test('no key but the right one opens it', () => {
  expect(() => other.open(seal.close(note))).toThrow('authenticate');
});

test('a changed byte, and a header of another record, are noticed', () => {
  const closed = seal.close(note);
  expect(() => seal.open({ ...closed, sealed: Uint8Array.of(2, ...closed.sealed.slice(1)) })).toThrow('authenticate');
  for (let at = 1; at < closed.sealed.length; at++) {
    const sealed = Uint8Array.from(closed.sealed);
    sealed[at] = (sealed[at] ?? 0) ^ 1;
    expect(() => seal.open({ ...closed, sealed })).toThrow('authenticate');
  }
  expect(() => seal.open({ ...closed, sealed: Uint8Array.of(3) })).toThrow('a form that is not known');
  for (const changed of [{ owner: newId() }, { id: newId() }, { kind: 'shot' }, { version: 2 }, { supersedes: null }])
    expect(() => seal.open({ ...closed, ...changed })).toThrow('authenticate');
});
