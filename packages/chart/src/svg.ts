import { hundredths } from './hundredths.ts';
import { LAYERS, type Line, type Mark, type Scene, type Text } from './marks.ts';
import { type Palette, PALETTES } from './palette.ts';
import { FAMILY_LISTS } from './text/faces.ts';
import { widthPx } from './text/measure.ts';

export interface SvgOptions {
  /** The colours; those of paper unless given. A page that the drawing stands in may set others, by custom properties of the roles' names. */
  readonly palette?: Palette;
  /** Style rules for the drawing's head, as `facesOf` gives them, so that it needs no fonts of the machine. */
  readonly faces?: string;
}

/** A scene as one SVG document: an image with a title and a description, a group a layer, no patterns, masks or clips. */
export function svg(scene: Scene, { palette = PALETTES.paper, faces = '' }: SvgOptions = {}): string {
  const { widthPx: w, heightPx: h } = scene;
  const layers = LAYERS.flatMap((layer) => {
    const marks = scene.marks.filter((m) => m.layer === layer);
    return marks.length === 0 ? [] : [`<g class="${layer}">`, ...marks.flatMap((m) => element(m, palette)), '</g>'];
  });
  const name = escaped(scene.title);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${name}" text-rendering="geometricPrecision" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}">`,
    `<title>${name}</title>`,
    `<desc>${escaped(scene.description)}</desc>`,
    ...(faces === '' ? [] : [`<style>${faces}</style>`]),
    ...layers,
    '</svg>\n',
  ].join('\n');
}

function element(mark: Mark, palette: Palette): string[] {
  const line = (thickPx: number): string =>
    `fill="none" stroke-linecap="round" stroke-linejoin="round" stroke-width="${n(thickPx)}" ${paint('stroke', mark, palette)}`;
  switch (mark.kind) {
    case 'fill':
      return mark.rings.length === 0
        ? []
        : [`<path fill-rule="evenodd" ${paint('fill', mark, palette)} d="${paths(mark.rings, true)}"/>`];
    case 'stroke':
      return mark.lines.length === 0 ? [] : [`<path ${line(mark.widthPx)} d="${paths(mark.lines, mark.closed)}"/>`];
    case 'dots': {
      if (mark.at.length === 0) return [];
      if (mark.lineWidthPx === undefined) {
        const d = mark.at.map((p) => `M${n(p.x)} ${n(p.y)}h0`).join('');
        return [`<path ${line(2 * mark.radiusPx)} d="${d}"/>`];
      }
      const r = n(mark.radiusPx);
      const ring = `a${r} ${r} 0 1 0 ${n(2 * mark.radiusPx)} 0a${r} ${r} 0 1 0 ${n(-2 * mark.radiusPx)} 0z`;
      const d = mark.at.map((p) => `M${n(p.x - mark.radiusPx)} ${n(p.y)}${ring}`).join('');
      return [`<path ${line(mark.lineWidthPx)} d="${d}"/>`];
    }
    case 'text':
      return [text(mark, palette)];
  }
}

/** An attribute for those who know no custom properties, and a style for those who do. */
const paint = (what: 'fill' | 'stroke', { role, opacity }: Pick<Mark, 'role' | 'opacity'>, palette: Palette): string =>
  `${what}="${palette[role]}" style="${what}:var(--${role},${palette[role]})"${faint(opacity)}`;

const faint = (opacity = 1, of = ''): string => (opacity === 1 ? '' : ` ${of}opacity="${n(opacity)}"`);

function text(mark: Text, palette: Palette): string {
  const { font, at, opacity } = mark;
  const turned =
    mark.turnRad === 0 ? '' : ` transform="rotate(${n((mark.turnRad * 180) / Math.PI)} ${n(at.x)} ${n(at.y)})"`;
  const halo =
    mark.haloPx === 0
      ? ''
      : ` stroke="${palette.sheet}" stroke-width="${n(mark.haloPx)}" stroke-linejoin="round" paint-order="stroke"${faint(opacity, 'stroke-')}`;
  const haloStyle = mark.haloPx === 0 ? '' : `;stroke:var(--sheet,${palette.sheet})`;
  const figures = font.face === 'sans' ? ';font-variant-numeric:tabular-nums' : '';
  return [
    `<text x="${n(at.x)}" y="${n(at.y)}"${turned} text-anchor="${mark.anchor}" font-family="${FAMILY_LISTS[font.face]}"`,
    ` font-size="${n(font.sizePx)}" font-weight="${font.weight}"${font.italic ? ' font-style="italic"' : ''}`,
    font.trackingPx === 0 ? '' : ` letter-spacing="${n(font.trackingPx)}"`,
    // a viewer without the fonts squeezes its own into the room that was measured
    ` textLength="${n(widthPx(mark.text, font))}" lengthAdjust="spacingAndGlyphs"`,
    ` fill="${palette[mark.role]}"${faint(opacity, 'fill-')}${halo}`,
    ` style="fill:var(--${mark.role},${palette[mark.role]})${haloStyle}${figures}"`,
    `>${escaped(mark.text)}</text>`,
  ].join('');
}

const paths = (lines: readonly Line[], closed: boolean): string =>
  lines.map((l) => `M${l.map((p) => `${n(p.x)} ${n(p.y)}`).join('L')}${closed ? 'z' : ''}`).join('');

const n = (px: number): string => String(hundredths(px));

const ENTITIES: { readonly [letter: string]: string } = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Safe inside text and quoted attributes; control characters, which XML forbids, become spaces. */
const escaped = (words: string): string =>
  words.replace(/[\p{Cc}\p{Cs}￾￿]/gu, ' ').replace(/[&<>"']/g, (c) => ENTITIES[c] ?? c);
