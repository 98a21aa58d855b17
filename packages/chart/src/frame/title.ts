import type { Font, Line, Mark, Role, Text } from '../marks.ts';
import { quadOf, type Rect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { italic, sans, serif } from '../text/fonts.ts';
import { widthPx } from '../text/measure.ts';
import { fitting, wrapped } from '../text/wrap.ts';

/** What the title block says. */
export interface Title {
  readonly course: string | undefined;
  readonly name: string;
  /** "Hole 7, par 4, 381 yards". */
  readonly hole: string;
  /** What the lines and arms are; whose map it is. */
  readonly notes: readonly string[];
}

/** Figures of the scale bar, longest first: the first that is no longer than `LONGEST_PX` is drawn. */
const BARS = [
  [0, 50, 100, 200],
  [0, 20, 50, 100],
  [0, 10, 20, 40],
  [0, 5, 10, 20],
] as const;
const LONGEST_PX = 200;
const SIDE_PX = 22;
const SHEET_GAP_PX = 8;

interface Row {
  readonly text: string;
  readonly font: Font;
  readonly role: Role;
  /** From the foot of the row before to this foot. */
  readonly downPx: number;
}

/** Wide enough for most names; longer ones are set smaller, and notes go on to a next line. */
const WIDEST_PX = 216;

function rowsOf(title: Title): Row[] {
  const rows: Row[] = [];
  const courses = title.course === undefined ? [] : wrapped(title.course.toUpperCase(), serif(13.5, 1.6), WIDEST_PX);
  for (const [i, text] of courses.entries())
    rows.push({ text, font: fitting(text, serif(13.5, 1.6), WIDEST_PX, 11), role: 'ink', downPx: i === 0 ? 26 : 18 });
  const name = fitting(title.name, italic(26), WIDEST_PX, 15);
  for (const [i, text] of wrapped(title.name, name, WIDEST_PX).entries())
    rows.push({ text, font: name, role: 'ink', downPx: i > 0 ? name.sizePx + 2 : courses.length === 0 ? 36 : 28 });
  rows.push({ text: title.hole, font: fitting(title.hole, serif(15), WIDEST_PX, 13), role: 'ink', downPx: 24 });
  const notes = title.notes.flatMap((note) => wrapped(note, sans(13), WIDEST_PX));
  rows.push(...notes.map((text, i): Row => ({ text, font: sans(13), role: 'ink', downPx: i === 0 ? 33 : 16 })));
  return rows;
}

/** Width and height of a title block, with the clear rim between it and the ground. */
export function titleSize(title: Title, sheet: Sheet): { readonly widthPx: number; readonly heightPx: number } {
  const rows = rowsOf(title);
  const bar = barPx(sheet) + 20;
  const width = Math.max(bar, ...rows.map((r) => widthPx(r.text, r.font))) + 2 * SIDE_PX;
  const height = rows.reduce((sum, r) => sum + r.downPx, 0) + 64;
  return { widthPx: width + SHEET_GAP_PX, heightPx: height + SHEET_GAP_PX };
}

const barOf = (sheet: Sheet): (typeof BARS)[number] =>
  BARS.find((bar) => bar[3] * sheet.unitM * sheet.pxPerM <= LONGEST_PX) ?? BARS[3];
const barPx = (sheet: Sheet): number => barOf(sheet)[3] * sheet.unitM * sheet.pxPerM;

/** The title block in a rectangle that touches two sides of the inside of the frame. */
export function titleBlock(title: Title, sheet: Sheet, rect: Rect): Mark[] {
  const onLeft = rect.left <= sheet.inner.left + 1;
  const onTop = rect.top <= sheet.inner.top + 1;
  const box: Rect = {
    left: rect.left + (onLeft ? 0 : SHEET_GAP_PX),
    right: rect.right - (onLeft ? SHEET_GAP_PX : 0),
    top: rect.top + (onTop ? 0 : SHEET_GAP_PX),
    bottom: rect.bottom - (onTop ? SHEET_GAP_PX : 0),
  };
  const middle = (box.left + box.right) / 2;
  const texts: Text[] = [];
  let foot = box.top;
  let ruleY = foot;
  for (const row of rowsOf(title)) {
    foot += row.downPx;
    if (row.text === title.hole) ruleY = foot + 11;
    texts.push(words(row.text, row.font, row.role, middle, foot));
  }
  const line = { kind: 'stroke', layer: 'frame', role: 'ink', closed: false } as const;
  const inset = (by: number): Line =>
    quadOf({ left: box.left + by, top: box.top + by, right: box.right - by, bottom: box.bottom - by });
  return [
    { kind: 'fill', layer: 'frame', role: 'sheet', rings: [quadOf(rect)] },
    { ...line, closed: true, lines: [inset(0.5)], widthPx: 0.9 },
    { ...line, closed: true, lines: [inset(3.5)], widthPx: 0.6 },
    {
      ...line,
      lines: [
        [
          { x: middle - 34, y: ruleY },
          { x: middle + 34, y: ruleY },
        ],
      ],
      widthPx: 0.8,
    },
    ...texts,
    ...scaleBar(sheet, middle, foot + 26),
  ];
}

const words = (text: string, font: Font, role: Role, x: number, y: number): Text => ({
  kind: 'text',
  layer: 'frame',
  role,
  text,
  font,
  at: { x, y },
  anchor: 'middle',
  turnRad: 0,
  haloPx: 0,
});

/** The scale bar: black, white, black, with its figures above and its unit below. */
function scaleBar(sheet: Sheet, middle: number, y: number): Mark[] {
  const stops = barOf(sheet);
  const px = sheet.unitM * sheet.pxPerM;
  const left = middle - barPx(sheet) / 2;
  const part = (i: number): Line =>
    quadOf({ left: left + (stops[i] ?? 0) * px, right: left + (stops[i + 1] ?? 0) * px, top: y, bottom: y + 4 });
  const [first, second, third] = [part(0), part(1), part(2)];
  return [
    { kind: 'fill', layer: 'frame', role: 'ink', rings: [first, third] },
    { kind: 'stroke', layer: 'frame', role: 'ink', lines: [first, second, third], closed: true, widthPx: 0.8 },
    ...stops.map((n) => words(String(n), sans(11), 'ink', left + n * px, y - 5)),
    words(sheet.units === 'yd' ? 'yards' : 'metres', sans(11.5), 'ink-2', middle, y + 18),
  ];
}
