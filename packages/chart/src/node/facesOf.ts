import { readFile } from 'node:fs/promises';
import type { Scene, Text } from '../marks.ts';
import { cutOf, FAMILIES, SANS_FEATURES } from '../text/faces.ts';
import { isFor, type Subset, SUBSETS, woff2Path } from './fontFiles.ts';

/**
 * The fonts that a scene is set in, as `@font-face` rules with the files inside: with them an SVG looks the same on a machine that has
 * none of them. Only the cuts that are used, and of each only the parts whose letters occur.
 */
export async function facesOf({ marks }: Pick<Scene, 'marks'>): Promise<string> {
  const texts = marks.filter((m): m is Text => m.kind === 'text');
  const rules = [...Map.groupBy(texts, (text) => cutOf(text.font)).values()].flatMap((ofCut) => {
    const [first] = ofCut;
    const codes = ofCut.flatMap((text) => Array.from(text.text, (letter) => letter.codePointAt(0) ?? 0));
    return first ? SUBSETS.filter((s) => codes.some((c) => isFor(s, c))).map((s) => rule(first.font, s)) : [];
  });
  return (await Promise.all(rules)).toSorted().join('\n');
}

async function rule(font: Text['font'], subset: Subset): Promise<string> {
  const base64 = await readFile(woff2Path(font, subset), 'base64');
  const features = font.face === 'sans' ? [`font-feature-settings:${SANS_FEATURES}`] : [];
  return [
    `@font-face{font-family:'${FAMILIES[font.face]}';font-weight:${font.weight};font-style:${font.italic ? 'italic' : 'normal'}`,
    ...features,
    `unicode-range:${subset.stretches.map(([first, last]) => `U+${first.toString(16)}-${last.toString(16)}`).join()}`,
    `src:url(data:font/woff2;base64,${base64})format('woff2')}`,
  ].join(';');
}
