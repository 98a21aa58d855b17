import { fileURLToPath } from 'node:url';
import type { Font } from '../marks.ts';

/** The cuts of the two families that charts are set in, as whole TTF files. */
const TTF: { readonly [cut: string]: string } = {
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
};

export const CUTS = Object.keys(TTF);

/** The path of a cut's TTF file. Throws a RangeError for a cut that there is none of. */
export function ttfPath(cut: string): string {
  const url = TTF[cut];
  if (url === undefined) throw new RangeError(`no font file for ${cut}; there are ${CUTS.join(', ')}`);
  return fileURLToPath(url);
}

/** The parts that the web fonts are cut into, and the letters that each is for: first and last code point of each stretch. */
export const SUBSETS = [
  {
    name: 'latin',
    stretches: [
      [0x20, 0xff],
      [0x131, 0x131],
      [0x152, 0x153],
      [0x2010, 0x2026],
      [0x2212, 0x2212],
    ],
  },
  {
    name: 'latin-ext',
    stretches: [
      [0x100, 0x130],
      [0x132, 0x151],
      [0x154, 0x17f],
    ],
  },
] as const;
export type Subset = (typeof SUBSETS)[number];

/** Is a part for a letter, given by its code point? */
export const isFor = ({ stretches }: Subset, code: number): boolean =>
  stretches.some(([first, last]) => code >= first && code <= last);

/** A file in the folder of each family's web fonts. */
const WEB_FONTS = {
  serif: ['libre-caslon-text', import.meta.resolve('@fontsource/libre-caslon-text/metadata.json')],
  sans: ['barlow-semi-condensed', import.meta.resolve('@fontsource/barlow-semi-condensed/metadata.json')],
} as const;

/** The path of one part of a font's WOFF2 files. */
export function woff2Path({ face, weight, italic }: Omit<Font, 'sizePx' | 'trackingPx'>, subset: Subset): string {
  const [family, beside] = WEB_FONTS[face];
  const name = `${family}-${subset.name}-${weight}-${italic ? 'italic' : 'normal'}.woff2`;
  return fileURLToPath(new URL(`files/${name}`, beside));
}
