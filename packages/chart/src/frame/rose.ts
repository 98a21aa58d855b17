import { RAD_PER_DEG } from '@leeway/engine';
import type { ShownWind } from '../charted.ts';
import type { Line, Mark, Text, Xy } from '../marks.ts';
import { circle } from '../plane/line.ts';
import { quadOf } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { sans } from '../text/fonts.ts';
import { widthPx } from '../text/measure.ts';
import type { RoseRoom, Wanted } from './room.ts';

/** Radius of the ring, and of the clear disc round all of it. */
const RING_PX = { sheet: 38, phone: 31 };
const CLEAR = 54 / 38;
/** Radius of the clear disc round a full-sized rose. */
export const ROSE_PX = CLEAR * RING_PX.sheet;
const MPS_PER_MPH = 0.44704;

/** The rose: a ring of 5 degree ticks, a star of eight points, half of each black, a fleur at true north, and the wind through it with its words. */
export function rose(sheet: Sheet, room: RoseRoom, wind: ShownWind | undefined, arrowOver = false): Mark[] {
  const { at, radiusPx } = room;
  const scale = radiusPx / ROSE_PX;
  /** A place at a bearing, so many px of a full-sized rose from its middle. */
  const place = (bearingRad: number, px: number): Xy => ({
    x: at.x + scale * px * Math.sin(bearingRad - sheet.upRad),
    y: at.y - scale * px * Math.cos(bearingRad - sheet.upRad),
  });
  return [
    { kind: 'fill', layer: 'frame', role: 'sheet', rings: [circle(at, radiusPx)] },
    ...card(at, scale, place),
    ...fleur(place),
    ...windMarks(sheet, room, wind, arrowOver ? undefined : place),
  ];
}

/** What a rose needs of room. */
export function roseWanted(sheet: Sheet, wind: ShownWind | undefined): Wanted['rose'] {
  const radiusPx = CLEAR * (sheet.phone ? RING_PX.phone : RING_PX.sheet);
  if (wind === undefined) return { radiusPx, wordsWidthPx: 0, wordsHeightPx: 0 };
  const rows = windWords(sheet, wind);
  const width = Math.max(...rows.map((r) => widthPx(r.text, r.font)));
  return { radiusPx, wordsWidthPx: width + 16, wordsHeightPx: rows.length * ROW_PX + 4 };
}

type Place = (bearingRad: number, px: number) => Xy;

/** The ring with its ticks, and the star. */
function card(at: Xy, scale: number, place: Place): Mark[] {
  const ring = RING_PX.sheet;
  const line = { kind: 'stroke', layer: 'frame', role: 'ink', closed: false } as const;
  const ticks: Line[] = Array.from({ length: 72 }, (_, i) => {
    const turn = (i * Math.PI) / 36;
    return [place(turn, ring - 4.5), place(turn, ring - (i % 6 === 0 ? 9 : i % 2 === 0 ? 7.5 : 6))];
  });
  const black: Line[] = [];
  const points: Line[] = [];
  for (const i of [1, 3, 5, 7, 0, 2, 4, 6]) {
    const turn = (i * Math.PI) / 4;
    const tip = place(turn, i % 2 === 0 ? 27 : 17);
    const [left, right] = [place(turn - Math.PI / 8, 6), place(turn + Math.PI / 8, 6)];
    black.push([at, tip, right]);
    points.push([at, left, tip, right]);
  }
  const rings = [circle(at, scale * ring, 72), circle(at, scale * (ring - 4.5), 72)];
  return [
    { ...line, lines: rings, closed: true, widthPx: 0.8 },
    { ...line, lines: ticks, widthPx: 0.7 },
    ...points.flatMap((point, i): Mark[] => [
      { kind: 'fill', layer: 'frame', role: 'sheet', rings: [point] },
      { kind: 'fill', layer: 'frame', role: 'ink', rings: [black[i] ?? point] },
    ]),
    { ...line, lines: points, closed: true, widthPx: 0.7 },
  ];
}

/** A fleur: a tall petal between two bent ones over a bar, its foot on the ring. */
function fleur(place: Place): Mark[] {
  const ring = RING_PX.sheet;
  const at = (x: number, y: number): Xy => place(Math.atan2(x, ring + y), Math.hypot(x, ring + y));
  const petal: Line = [at(0, 15), at(2.6, 9), at(1.3, 3), at(-1.3, 3), at(-2.6, 9)];
  const bent = (s: number): Line => [
    at(s * 1.6, 3.4),
    at(s * 3.2, 7.6),
    at(s * 5.4, 9.4),
    at(s * 7.4, 7.6),
    at(s * 6.4, 5.4),
    at(s * 5.2, 6.8),
    at(s * 4, 3.4),
  ];
  const bar: Line = [at(-4.4, 3), at(4.4, 3), at(4.4, 1), at(-4.4, 1)];
  return [{ kind: 'fill', layer: 'frame', role: 'ink', rings: [petal, bent(-1), bent(1), bar] }];
}

const KNOB = { atPx: 45, radiusPx: 7, linePx: 1.8 };

/** The wind: an arrow through the rose that flies with it, a knob at its tail, and its words; of a calm the word alone. */
function windMarks(sheet: Sheet, room: RoseRoom, wind: ShownWind | undefined, place: Place | undefined): Mark[] {
  if (wind === undefined || room.words === undefined) return [];
  const { words } = room;
  const rows = windWords(sheet, wind);
  const texts = rows.map(({ text, font }, i): Text => {
    const foot = words.top + i * ROW_PX + 0.76 * font.sizePx;
    const at = { x: (words.left + words.right) / 2, y: foot };
    return { kind: 'text', layer: 'frame', role: 'ink', text, font, at, anchor: 'middle', turnRad: 0, haloPx: 0 };
  });
  const patch: Mark = { kind: 'fill', layer: 'frame', role: 'sheet', rings: [quadOf(words)] };
  return [
    patch,
    ...(place === undefined || speedIn(sheet, wind) === 0 ? [] : arrow(place, wind.fromDeg * RAD_PER_DEG)),
    ...texts,
  ];
}

function arrow(place: Place, fromRad: number): Mark[] {
  /** Along the wind from the rose's middle, and to its right. */
  const at = (along: number, aside: number): Xy =>
    place(fromRad + Math.PI + Math.atan2(aside, along), Math.hypot(along, aside));
  const tail = at(-KNOB.atPx, 0);
  const line = { kind: 'stroke', layer: 'frame', closed: false } as const;
  const shaft: Line = [at(KNOB.radiusPx - KNOB.atPx, 0), at(22, 0)];
  const head: Line = [at(32, 0), at(20, 5), at(22.5, 0), at(20, -5)];
  const grip: Line[] = [-2.6, 0, 2.6].map((d) => {
    const reach = Math.sqrt(16 - d * d);
    return [at(d - KNOB.atPx, -reach), at(d - KNOB.atPx, reach)];
  });
  const knob = circle(tail, apart(tail, at(KNOB.radiusPx - KNOB.atPx, 0)));
  return [
    { ...line, role: 'sheet', lines: [shaft, [...head, head[0] ?? tail]], widthPx: 4.6 },
    { ...line, role: 'ink', lines: [shaft], widthPx: 2.2 },
    { kind: 'fill', layer: 'frame', role: 'ink', rings: [head] },
    { kind: 'fill', layer: 'frame', role: 'sheet', rings: [knob] },
    { ...line, role: 'ink', lines: [knob], closed: true, widthPx: KNOB.linePx },
    { ...line, role: 'ink', lines: grip, widthPx: 1 },
  ];
}

const apart = (a: Xy, b: Xy): number => Math.hypot(b.x - a.x, b.y - a.y);

const ROW_PX = 16;

const speedIn = ({ units }: Sheet, { speedMps }: ShownWind): number =>
  Math.round(units === 'yd' ? speedMps / MPS_PER_MPH : speedMps);

/** "4 mph" and whence it is known, or "calm". */
function windWords(sheet: Sheet, wind: ShownWind): Pick<Text, 'text' | 'font'>[] {
  const speed = speedIn(sheet, wind);
  const first = speed === 0 ? 'calm' : `${speed} ${sheet.units === 'yd' ? 'mph' : 'm/s'}`;
  return [
    { text: first, font: sans(15, 600) },
    { text: wind.known, font: sans(13) },
  ];
}
