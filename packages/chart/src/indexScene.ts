import type { HoleGround, PlanePoint } from '@leeway/engine';
import { placeAt } from '@leeway/engine';
import { coverOf } from './ground/cover.ts';
import { tintMarks } from './ground/groundMarks.ts';
import { groundAt } from './groundAt.ts';
import { inOrder, type Line, type Mark, type Placing, type Scene, type Text, type Xy } from './marks.ts';
import { keepWhere, shut } from './plane/line.ts';
import { grown, inRect, quadOf, type Rect } from './plane/quad.ts';
import { indexSheet, type Sheet, type Size } from './sheet.ts';
import { sans } from './text/fonts.ts';

/** One sheet of a hole's shots as an index shows it: where it lies, and the ball that it starts from. */
export interface IndexedSheet extends Size {
  readonly placing: Placing;
  readonly ball: PlanePoint;
}

const NUMBER_PX = 15;

/**
 * The index of a hole: its plan small, without hatches or figures, the sheets of its shots numbered at their balls, and the present one (`shown`, its
 * place in `sheets`) outlined with its number filled.
 */
export function indexScene(ground: HoleGround, sheets: readonly IndexedSheet[], shown: number, size: Size): Scene {
  const sheet = indexSheet(ground, size);
  const cover = coverOf(ground, sheet);
  const present = sheets[shown];
  const marks: Mark[] = [
    ...tintMarks(sheet, cover),
    lineOfPlay(sheet, [...sheets.map((s) => s.ball), ground.flag]),
    ...flag(sheet.toPaper(ground.flag)),
    ...(present ? [outline(sheet, present)] : []),
    ...sheets.flatMap((s, i) => number(sheet, s, i, i === shown)),
  ];
  const title = `Index of the sheets of ${ground.name ?? `hole ${ground.hole}`}`;
  const description = `${sheets.length} ${sheets.length === 1 ? 'sheet' : 'sheets'}; sheet ${shown + 1} is shown.`;
  return { ...size, placing: sheet.placing, title, description, marks: inOrder(marks) };
}

const lineOfPlay = (sheet: Sheet, places: readonly PlanePoint[]): Mark => ({
  kind: 'stroke',
  layer: 'lines',
  role: 'ink',
  lines: [places.map((p) => sheet.toPaper(p))],
  closed: false,
  widthPx: 1,
});

/** The edge of a sheet, turned as it lies on the hole, so far as it is on the index. */
function outline(sheet: Sheet, { placing, widthPx, heightPx }: IndexedSheet): Mark {
  const corners = quadOf({ left: 0, top: 0, right: widthPx, bottom: heightPx });
  const line = shut(corners.map((q) => sheet.toPaper(groundAt(placing, q))));
  const lines = keepWhere(line, (q) => inRect(q, grown(sheet.inner, 1)));
  return { kind: 'stroke', layer: 'frame', role: 'ink', lines, closed: false, widthPx: 1.6 };
}

/** A number in a square beside the ball of a sheet: white on ink for the present one. */
function number(sheet: Sheet, { ball }: IndexedSheet, index: number, present: boolean): Mark[] {
  const beside = sheet.toPaper(placeAt(ball, sheet.upRad, 0, (-0.75 * NUMBER_PX) / sheet.pxPerM));
  const half = NUMBER_PX / 2;
  const { inner } = sheet;
  const at: Xy = {
    x: Math.min(inner.right - half - 1, Math.max(inner.left + half + 1, beside.x)),
    y: Math.min(inner.bottom - half - 1, Math.max(inner.top + half + 1, beside.y)),
  };
  const box: Rect = { left: at.x - half, right: at.x + half, top: at.y - half, bottom: at.y + half };
  const ring: Line = quadOf(box);
  const text: Text = {
    kind: 'text',
    layer: 'frame',
    role: present ? 'sheet' : 'ink',
    text: String(index + 1),
    font: sans(12.5, 600),
    at: { x: at.x, y: at.y + 0.36 * 12.5 },
    anchor: 'middle',
    turnRad: 0,
    haloPx: 0,
  };
  return [
    { kind: 'fill', layer: 'frame', role: present ? 'ink' : 'sheet', rings: [ring] },
    { kind: 'stroke', layer: 'frame', role: 'ink', lines: [ring], closed: true, widthPx: 1 },
    text,
  ];
}

function flag(at: Xy): Mark[] {
  const top = { x: at.x, y: at.y - 11 };
  return [
    { kind: 'stroke', layer: 'lines', role: 'ink', lines: [[at, top]], closed: false, widthPx: 1 },
    {
      kind: 'fill',
      layer: 'lines',
      role: 'ink',
      rings: [[top, { x: at.x + 6, y: at.y - 8.5 }, { x: at.x, y: at.y - 6 }]],
    },
  ];
}
