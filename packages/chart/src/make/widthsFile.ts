import { open } from 'fontkit';
import { CUTS, ttfPath } from '../node/fontFiles.ts';

/** Printable ASCII, Latin-1 and the few signs beyond it. */
const LETTERS = [
  ...span(0x20, 0x7e),
  ...span(0xa0, 0x17f),
  0x2013,
  0x2014,
  0x2018,
  0x2019,
  0x201c,
  0x201d,
  0x2026,
  0x2212,
];

function span(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

/** The text of `widths.ts`: advance widths in thousandths of the size, from the font files. */
export async function widthsFile(): Promise<string> {
  const rows: string[] = [];
  for (const cut of CUTS) {
    const font = await open(ttfPath(cut));
    if (!('unitsPerEm' in font)) throw new Error(`the file of ${cut} holds more than one font`);
    const features = cut.startsWith('sans') ? ['tnum'] : [];
    const widths = LETTERS.map((letter) =>
      font.hasGlyphForCodePoint(letter)
        ? Math.round((font.layout(String.fromCodePoint(letter), features).advanceWidth * 1000) / font.unitsPerEm)
        : -1,
    );
    rows.push(`  '${cut}': '${widths.join(' ')}',`);
  }
  return [
    '/** Made from the fonts by `npm run make -w @leeway/chart`: advance widths in thousandths of the size, in the order of LETTERS; -1 is no such letter. */',
    '// prettier-ignore',
    `export const LETTERS = '${LETTERS.map((l) => l.toString(16)).join(' ')}';`,
    '// prettier-ignore',
    `export const WIDTHS = {\n${rows.join('\n')}\n} as const;\n`,
  ].join('\n');
}
