import { widthPx } from './text/measure.ts';
import { LAYERS, type Line, type Mark, type Role, type Scene, type Text } from './marks.ts';

/** The colours of the printed sheet; a page may set others through the custom properties of the same names. */
const COLOURS: { readonly [R in Role]: string } = {
  paper: '#F6F4EC',
  sheet: '#FCFBF6',
  ink: '#14222D',
  'ink-2': '#42525C',
  contour: '#2C6079',
  shore: '#3E7186',
  whins: '#56683F',
  stipple: '#8B7B4A',
  buoy: '#BF3A08',
  rough: '#F0E8CE',
  green: '#DCE7D3',
  sea: '#D3E3E7',
  sand: '#FAF3DF',
  scrub: '#E3E3C4',
};

const FACES = {
  serif: `'Libre Caslon Text', 'Times New Roman', serif`,
  sans: `'Barlow Semi Condensed', 'Arial Narrow', sans-serif`,
} as const;

/** A scene as one SVG document: an image with a title and a description, a group a layer, no patterns, masks or clips. */
export function svg(scene: Scene): string {
  const { widthPx: w, heightPx: h } = scene;
  const layers = LAYERS.flatMap((layer) => {
    const marks = scene.marks.filter((m) => m.layer === layer);
    return marks.length === 0 ? [] : [`<g class="${layer}">`, ...marks.flatMap(element), '</g>'];
  });
  const name = escaped(scene.title);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${name}" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}">`,
    `<title>${name}</title>`,
    `<desc>${escaped(scene.description)}</desc>`,
    ...layers,
    '</svg>\n',
  ].join('\n');
}

function element(mark: Mark): string[] {
  switch (mark.kind) {
    case 'fill':
      return mark.rings.length === 0
        ? []
        : [`<path fill-rule="evenodd" ${paint('fill', mark.role, mark.opacity)} d="${paths(mark.rings, true)}"/>`];
    case 'stroke':
      return mark.lines.length === 0
        ? []
        : [`<path ${line(mark.role, mark.widthPx, mark.opacity)} d="${paths(mark.lines, mark.closed)}"/>`];
    case 'dots': {
      if (mark.at.length === 0) return [];
      if (mark.lineWidthPx === undefined) {
        const d = mark.at.map((p) => `M${n(p.x)} ${n(p.y)}h0`).join('');
        return [`<path ${line(mark.role, 2 * mark.radiusPx, mark.opacity)} d="${d}"/>`];
      }
      const r = n(mark.radiusPx);
      const ring = `a${r} ${r} 0 1 0 ${n(2 * mark.radiusPx)} 0a${r} ${r} 0 1 0 ${n(-2 * mark.radiusPx)} 0z`;
      const d = mark.at.map((p) => `M${n(p.x - mark.radiusPx)} ${n(p.y)}${ring}`).join('');
      return [`<path ${line(mark.role, mark.lineWidthPx, mark.opacity)} d="${d}"/>`];
    }
    case 'text':
      return [text(mark)];
  }
}

/** An attribute for those who know no custom properties, and a style for those who do. */
const paint = (what: 'fill' | 'stroke', role: Role, opacity = 1): string =>
  `${what}="${COLOURS[role]}" style="${what}:var(--${role},${COLOURS[role]})"${opacity === 1 ? '' : ` opacity="${n(opacity)}"`}`;

const line = (role: Role, thickPx: number, opacity?: number): string =>
  `fill="none" stroke-linecap="round" stroke-linejoin="round" stroke-width="${n(thickPx)}" ${paint('stroke', role, opacity)}`;

function text(mark: Text): string {
  const { font, at } = mark;
  const turned =
    mark.turnRad === 0 ? '' : ` transform="rotate(${n((mark.turnRad * 180) / Math.PI)} ${n(at.x)} ${n(at.y)})"`;
  const halo =
    mark.haloPx === 0
      ? ''
      : ` stroke="${COLOURS.sheet}" stroke-width="${n(mark.haloPx)}" stroke-linejoin="round" paint-order="stroke"`;
  const haloStyle = mark.haloPx === 0 ? '' : `;stroke:var(--sheet,${COLOURS.sheet})`;
  return [
    `<text x="${n(at.x)}" y="${n(at.y)}"${turned} text-anchor="${mark.anchor}" font-family="${FACES[font.face]}"`,
    ` font-size="${n(font.sizePx)}" font-weight="${font.weight}"${font.italic ? ' font-style="italic"' : ''}`,
    font.trackingPx === 0 ? '' : ` letter-spacing="${n(font.trackingPx)}"`,
    // a viewer without the fonts squeezes its own into the room that was measured
    ` textLength="${n(widthPx(mark.text, font))}" lengthAdjust="spacingAndGlyphs"`,
    ` fill="${COLOURS[mark.role]}"${halo} style="fill:var(--${mark.role},${COLOURS[mark.role]})${haloStyle}"`,
    `>${escaped(mark.text)}</text>`,
  ].join('');
}

const paths = (lines: readonly Line[], closed: boolean): string =>
  lines.map((l) => `M${l.map((p) => `${n(p.x)} ${n(p.y)}`).join('L')}${closed ? 'z' : ''}`).join('');

/** At most two decimals: a fiftieth of a pixel is not seen. */
const n = (value: number): string => String(Math.round(value * 100) / 100 + 0);

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
