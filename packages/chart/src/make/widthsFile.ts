import { fileURLToPath } from 'node:url';
import { open } from 'fontkit';

/** The cuts of the two families that charts use, by their name in the table, and where they are. */
const CUTS = {
  'serif 400': import.meta.resolve('@expo-google-fonts/libre-caslon-text/400Regular/LibreCaslonText_400Regular.ttf'),
  'serif 400 italic': import.meta
    .resolve('@expo-google-fonts/libre-caslon-text/400Regular_Italic/LibreCaslonText_400Regular_Italic.ttf'),
  'serif 700': import.meta.resolve('@expo-google-fonts/libre-caslon-text/700Bold/LibreCaslonText_700Bold.ttf'),
  'sans 400': import.meta
    .resolve('@expo-google-fonts/barlow-semi-condensed/400Regular/BarlowSemiCondensed_400Regular.ttf'),
  'sans 500': import.meta
    .resolve('@expo-google-fonts/barlow-semi-condensed/500Medium/BarlowSemiCondensed_500Medium.ttf'),
  'sans 600': import.meta
    .resolve('@expo-google-fonts/barlow-semi-condensed/600SemiBold/BarlowSemiCondensed_600SemiBold.ttf'),
  'sans 700': import.meta.resolve('@expo-google-fonts/barlow-semi-condensed/700Bold/BarlowSemiCondensed_700Bold.ttf'),
} as const;

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
  for (const [cut, path] of Object.entries(CUTS)) {
    const font = await open(fileURLToPath(path));
    if (!('unitsPerEm' in font)) throw new Error(`${path} holds more than one font`);
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
