import type { Labels } from '../labels.ts';
import type { Mark, Text, Xy } from '../marks.ts';
import { dashed } from '../plane/line.ts';
import { grown, inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { sans } from '../text/fonts.ts';
import { within } from './drawShot.ts';
import type { ShotMarks } from './shotMarks.ts';
import { triangle } from './signs.ts';

const SPOT_PX = 13;
const FIGURE_PX = { sheet: 13, phone: 15 };
const BESIDE: readonly (readonly [number, number])[] = [
  [13, 5],
  [-13, 5],
  [0, 21],
  [0, -13],
];

/** The second and third choice: a broken line to a small open triangle in ink, with its number. */
export function alternativeMarks(sheet: Sheet, shown: ShotMarks, labels: Labels): Mark[] {
  const { alternatives, from } = shown.choice;
  return alternatives.flatMap(({ shown: other }, i): Mark[] => {
    const [ball, spot] = [sheet.toPaper(from.at), sheet.toPaper(other.spot)];
    const lines = within(sheet, [ball, spot]).flatMap((l) => dashed(l, [7, 4]));
    const line: Mark = { kind: 'stroke', layer: 'lines', role: 'ink-2', lines, closed: false, widthPx: 0.9 };
    if (!inRect(spot, grown(sheet.inner, -SPOT_PX))) return [line];
    const mark = { kind: 'stroke', layer: 'arms', closed: true, lines: [triangle(spot, SPOT_PX)] } as const;
    labels.takeRect(grown({ left: spot.x, right: spot.x, top: spot.y, bottom: spot.y }, SPOT_PX / 2));
    const number = labels.first(BESIDE.map((at) => [figure(String(i + 2), spot, at, sheet)])) ?? [];
    return [line, { ...mark, role: 'sheet', widthPx: 4.4 }, { ...mark, role: 'ink-2', widthPx: 1.5 }, ...number];
  });
}

const figure = (text: string, { x, y }: Xy, [dx, dy]: readonly [number, number], sheet: Sheet): Text => ({
  kind: 'text',
  layer: 'names',
  role: 'ink-2',
  text,
  font: sans(FIGURE_PX[sheet.phone ? 'phone' : 'sheet'], 600),
  at: { x: x + dx, y: y + dy },
  anchor: dx > 0 ? 'start' : dx < 0 ? 'end' : 'middle',
  turnRad: 0,
  haloPx: 3.4,
});
