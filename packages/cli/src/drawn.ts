import { type Light, PALETTES, type Scene, svg } from '@leeway/chart';
import { type Given, type OptionSpec, Usage } from './command.ts';

/** What a drawing is written as. */
export type Form = 'svg' | 'pdf';

export const LIGHT_OPTION: OptionSpec = {
  kind: 'text',
  value: 'paper|sun|print',
  help: 'the colours: paper (default for SVG), sun, or print (default for PDF), which has no tints',
};

/** What to write, by a file's ending. Throws `Usage`. */
export function formOf(out: string): Form {
  const ending = /\.(svg|pdf)$/i.exec(out)?.[1]?.toLowerCase();
  if (ending === 'svg' || ending === 'pdf') return ending;
  throw new Usage(`--out: found "${out}"; expected a name that ends in .svg or .pdf`);
}

/** The light that was asked for, else the form's own. Throws `Usage`. */
export function lightOf(given: Given, form: Form): Light {
  const text = given.text('light');
  if (text === undefined) return form === 'pdf' ? 'print' : 'paper';
  if (text === 'paper' || text === 'sun' || text === 'print') return text;
  throw new Usage(`--light: found "${text}"; expected paper, sun or print`);
}

/** The painters and the fonts are loaded when they are needed, so that other commands start quickly. */
export async function drawn(scene: Scene, form: Form, light: Light): Promise<string | Uint8Array> {
  const palette = PALETTES[light];
  if (form === 'pdf') return (await import('@leeway/chart/pdf')).pdf(scene, palette);
  const { facesOf } = await import('@leeway/chart/faces');
  return svg(scene, { palette, faces: await facesOf(scene) });
}
