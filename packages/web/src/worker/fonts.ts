import { FAMILIES, SANS_FEATURES } from '@leeway/chart';
import sans400 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-400-normal.woff2?url';
import sans500 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-500-normal.woff2?url';
import sans600 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-600-normal.woff2?url';
import sans700 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-700-normal.woff2?url';
import serif400 from '@fontsource/libre-caslon-text/files/libre-caslon-text-latin-400-normal.woff2?url';
import serifItalic from '@fontsource/libre-caslon-text/files/libre-caslon-text-latin-400-italic.woff2?url';
import serif700 from '@fontsource/libre-caslon-text/files/libre-caslon-text-latin-700-normal.woff2?url';

const face = (family: string, url: string, weight: string, more: FontFaceDescriptors = {}): FontFace =>
  new FontFace(family, `url(${url}) format('woff2')`, { weight, ...more });

const sans = (url: string, weight: string): FontFace =>
  face(FAMILIES.sans, url, weight, { featureSettings: SANS_FEATURES });

/** Loads the fonts that charts are set in, so that no sheet is painted in others. Rejects when one does not come. */
export async function loadFonts(fonts: FontFaceSet): Promise<void> {
  const faces = [
    sans(sans400, '400'),
    sans(sans500, '500'),
    sans(sans600, '600'),
    sans(sans700, '700'),
    face(FAMILIES.serif, serif400, '400'),
    face(FAMILIES.serif, serifItalic, '400', { style: 'italic' }),
    face(FAMILIES.serif, serif700, '700'),
  ];
  await Promise.all(
    faces.map(async (one) => {
      fonts.add(await one.load());
    }),
  );
}
