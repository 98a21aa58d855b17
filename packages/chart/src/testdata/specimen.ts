import type { Font, Mark, Role, Scene, Xy } from '../marks.ts';
import { italic, sans, serif } from '../text/fonts.ts';

const ROLES: readonly Role[] = ['rough', 'scrub', 'green', 'sand', 'sea', 'stipple', 'whins', 'shore', 'contour', 'buoy', 'ink-2', 'ink'];

const box = (x: number, y: number, sidePx: number): Xy[] => [
  { x, y },
  { x: x + sidePx, y },
  { x: x + sidePx, y: y + sidePx },
  { x, y: y + sidePx },
];

const words = (text: string, font: Font, x: number, y: number, more: Partial<Extract<Mark, { kind: 'text' }>> = {}): Mark => ({
  kind: 'text',
  layer: 'names',
  role: 'ink',
  text,
  font,
  at: { x, y },
  anchor: 'start',
  turnRad: 0,
  haloPx: 0,
  ...more,
});

/** Every kind of mark, ink, face and anchor, with gaps, holes, rims and turns: what a painter must know, on one small sheet. */
export function specimen(): Scene {
  const zigzag = [0, 1, 2, 3, 4, 5].map((i) => ({ x: 20 + 22 * i, y: i % 2 === 0 ? 78 : 104 }));
  const stroke = { kind: 'stroke', layer: 'lines', lines: [zigzag], closed: false } as const;
  const grid = Array.from({ length: 240 }, (_, i) => ({ x: 160 + 5 * (i % 24), y: 76 + 3.4 * Math.floor(i / 24) }));
  const marks: Mark[] = [
    { kind: 'fill', layer: 'tint', role: 'sheet', rings: [box(0, 0, 300)] },
    ...ROLES.map((role, i): Mark => ({ kind: 'fill', layer: 'tint', role, rings: [box(20 + 22 * i, 20, 16), box(24 + 22 * i, 24, 6)] })),
    { ...stroke, role: 'ink', widthPx: 6 },
    { ...stroke, role: 'sea', widthPx: 3.4, opacity: 0.8 },
    { ...stroke, role: 'contour', widthPx: 0.55, opacity: 0.62 },
    { ...stroke, role: 'buoy', lines: [box(22, 112, 14), box(30, 120, 14)], closed: true, widthPx: 2.3 },
    { ...stroke, role: 'whins', lines: [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [{ x: 60 + 6 * i, y: 124 }, { x: 60.01 + 6 * i, y: 124 }]), widthPx: 1.5 },
    { kind: 'dots', layer: 'pattern', role: 'ink', at: grid, radiusPx: 0.62 },
    { kind: 'dots', layer: 'pattern', role: 'ink', at: [{ x: 170, y: 124 }, { x: 182, y: 128 }, { x: 185, y: 126 }], radiusPx: 2.4, opacity: 0.6 },
    { kind: 'dots', layer: 'pattern', role: 'ink', at: [{ x: 206, y: 126 }, { x: 220, y: 126 }], radiusPx: 3.5, lineWidthPx: 0.9 },
    words('Specimen of AVA To, fjord', serif(17), 20, 162),
    words('Hole 7, par 4, 381 yards', { ...serif(13), weight: 700 }, 280, 282, { anchor: 'end', opacity: 0.7 }),
    words('The Saltings', italic(22), 20, 186, { haloPx: 4, role: 'contour' }),
    words('CREEK', italic(14, 2.6), 262, 172, { anchor: 'middle', turnRad: -0.5, haloPx: 3 }),
    ...([400, 500, 600, 700] as const).map((weight, i) => words(`${weight} 3.11 · 1¾ −2 ±0.04 14°`, sans(11.5, weight), 20, 210 + 17 * i)),
    words('16 · 19', sans(13, 700), 250, 216, { anchor: 'middle', role: 'buoy', haloPx: 4.6 }),
    words('2.1', sans(11.5, 500), 250, 250, { anchor: 'middle', role: 'contour', turnRad: 0.8 }),
    words('Łódź', sans(13, 600), 20, 282),
  ];
  return {
    widthPx: 300,
    heightPx: 300,
    placing: { origin: { x: 0, y: 0 }, pxPerM: 1, upRad: 0 },
    title: 'Specimen',
    description: 'Every kind of mark, ink, face and anchor.',
    marks,
  };
}
