import { randomUUID } from 'node:crypto';
import {
  HOUSE,
  newRecord,
  type RecordInput,
  type ShotFile,
  type ShotFileReading,
  type StoredRecord,
} from '@leeway/contract';
import { plainHeading } from '@leeway/formats';
import { current, type Store } from '@leeway/store';
import { digestOf } from './digest.ts';

type Headings = ShotFile['headings'];

/** What stands for a shape of file: its headings, however they are written. */
const shapeOf = (headings: Headings): string =>
  digestOf(JSON.stringify(headings.map(({ text }) => plainHeading(text))));

/** How a file with these headings was read last. */
export async function rememberedReading(
  store: Store,
  headings: Headings,
): Promise<StoredRecord<'reading'> | undefined> {
  const shape = shapeOf(headings);
  return (await current(store, { owner: HOUSE, kind: 'reading' })).findLast(({ body }) => body.headings === shape);
}

/** The record that remembers how a file was read; none when it is remembered so already. */
export async function readingToKeep(
  store: Store,
  { headings, reading }: Pick<ShotFile, 'headings' | 'reading'>,
): Promise<readonly RecordInput[]> {
  const before = await rememberedReading(store, headings);
  const meanings = headings.map(({ meaning }) => meaning ?? ('ignore' as const));
  const body = { headings: shapeOf(headings), meanings, units: reading.units };
  if (before !== undefined && JSON.stringify(before.body) === JSON.stringify(body)) return [];
  const supersedes = before === undefined ? {} : { supersedes: before.id };
  return [
    newRecord('reading', { owner: HOUSE, id: randomUUID(), madeAt: new Date().toISOString(), ...supersedes, body }),
  ];
}

/** The meanings of headings as the reader takes them; blank headings mean nothing. */
export const mapOf = (headings: readonly { readonly text: string }[], meanings: ShotFileReading['meanings']) =>
  new Map(
    (meanings ?? []).flatMap((meaning, i) => {
      const plain = plainHeading(headings[i]?.text ?? '');
      return plain === '' ? [] : [[plain, meaning] as const];
    }),
  );
