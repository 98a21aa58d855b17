import type { Font } from '../marks.ts';

/** The families that charts are set in, by the names under which a page loads them. */
export const FAMILIES: { readonly [F in Font['face']]: string } = {
  serif: 'Libre Caslon Text',
  sans: 'Barlow Semi Condensed',
};

/** The families as CSS lists them, with what stands in where they are missing. */
export const FAMILY_LISTS: { readonly [F in Font['face']]: string } = {
  serif: `'${FAMILIES.serif}', 'Times New Roman', serif`,
  sans: `'${FAMILIES.sans}', 'Arial Narrow', sans-serif`,
};

/**
 * Features the sans is set with: figures of one width. A canvas knows no features: whoever loads the sans for one gives this as the
 * `featureSettings` of its `FontFace`.
 */
export const SANS_FEATURES = `'tnum'`;

/** The name of a cut of a family, whatever its size: `sans 500`, `serif 400 italic`. */
export const cutOf = ({ face, weight, italic }: Pick<Font, 'face' | 'weight' | 'italic'>): string =>
  `${face} ${weight}${italic ? ' italic' : ''}`;
