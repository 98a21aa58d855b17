import { parByLength } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { HoleLine } from './holeLine.ts';

/** Par as tagged, else from the name ("Par 4"), else by length. */
export function parOf(
  { piece }: HoleLine,
  at: string,
  holeM: number,
  book: FaultBook,
): { readonly par: number; readonly parGuessed: boolean } {
  const tagged = piece.tags.get('par')?.trim();
  if (tagged !== undefined && /^[2-7]$/.test(tagged)) return { par: Number(tagged), parGuessed: false };
  const expected = 'par=3 to 6';
  if (tagged !== undefined)
    book.add(
      { code: 'bad-par', level: 'note', found: `par=${tagged}`, expected, done: 'par is looked for elsewhere' },
      at,
    );
  const inName = /\bpar\s*([3-6])\b/i.exec(piece.name ?? '')?.[1];
  if (inName !== undefined) return { par: Number(inName), parGuessed: false };
  const done = 'par is guessed from the length';
  book.add({ code: 'no-par', level: 'note', found: 'a hole without par', expected, done }, at);
  return { par: parByLength(holeM), parGuessed: true };
}
